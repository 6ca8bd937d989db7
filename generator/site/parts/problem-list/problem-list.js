/* Narrows the list of problems down to those that have what was chosen; without it the whole list stands, by shape. */
(function () {
  'use strict';

  var each = Swardbook.each;

  function words(count, chosen) {
    if (!chosen) return '';
    return count === 0 ? 'None has all of these. Set one of them back to "any".' : count === 1 ? '1 problem' : count + ' problems';
  }

  function start(root) {
    var filters = root.querySelector('[data-part="filters"]');
    var selects = Swardbook.list(filters.querySelectorAll('select'));

    function fits(row) {
      return selects.every(function (select) {
        return !select.value || row.getAttribute('data-' + select.getAttribute('data-filter')).split('|').indexOf(select.value) >= 0;
      });
    }

    function narrow() {
      var count = 0;
      each(root, '[data-part="group"]', function (group) {
        var shown = 0;
        each(group, '[data-part="row"]', function (row) {
          row.hidden = !fits(row);
          shown += row.hidden ? 0 : 1;
        });
        group.hidden = shown === 0;
        count += shown;
      });
      filters.querySelector('[data-part="left"]').textContent = words(count, selects.some(function (select) { return select.value; }));
    }

    filters.addEventListener('change', narrow);
    filters.addEventListener('submit', function (event) { event.preventDefault(); });
    filters.addEventListener('reset', function () { setTimeout(narrow, 0); });
    filters.hidden = false;
    narrow();
  }

  Swardbook.component('problem-list', start);
})();
