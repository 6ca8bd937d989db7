/* The place chosen on the home page stands first and says so. */
Swardbook.component('when-table', function (root) {
  var yours = Swardbook.preferences.get('place');
  Array.prototype.forEach.call(root.querySelectorAll('[data-place]'), function (row) {
    if (row.getAttribute('data-place') !== yours) return;
    row.classList.add('sb-when-table__place--yours');
    row.querySelector('.sb-when-table__yours').hidden = false;
    row.parentElement.insertBefore(row, row.parentElement.firstElementChild);
  });
});
