/* The place chosen on the home page stands first. */
Swardbook.component('when-table', function (root) {
  var yours = Swardbook.preferences.get('place');
  Array.prototype.forEach.call(root.querySelectorAll('[data-place]'), function (row) {
    if (row.getAttribute('data-place') === yours) row.parentElement.insertBefore(row, row.parentElement.firstElementChild);
  });
});
