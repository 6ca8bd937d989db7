/* Writes a list anew: `write(each, number)` makes an item of each. Whoever has the focus on a button in it finds it on the same button
   of the same thing (its `id`) afterwards, for the list also changes when another tab changed it. */
Swardbook.relist = function (list, all, write) {
  'use strict';
  var focus = list.contains(document.activeElement) ? document.activeElement : null, row = focus && focus.closest('[data-row]');
  var at = row ? Array.prototype.indexOf.call(row.querySelectorAll('button'), focus) : -1;
  list.textContent = '';
  all.forEach(function (each, number) {
    var made = list.appendChild(write(each, number));
    made.setAttribute('data-row', each.id);
    if (row && row.getAttribute('data-row') === each.id && at >= 0) { made.querySelectorAll('button')[at].focus(); }
  });
};
