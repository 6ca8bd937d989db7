/* The place chosen on the home page stands first. */
Swardbook.component('when-table', function (root) {
  var yours = Swardbook.preferences.get('place');
  Swardbook.each(root, '[data-place]', function (row) {
    if (row.getAttribute('data-place') === yours) row.parentElement.insertBefore(row, row.parentElement.firstElementChild);
  });
});

/* When at a place, in a line: the table below knows each. */
Swardbook.component('when-line', function (root) {
  var parts = Swardbook.parts(root), select = parts.place, yours = Swardbook.preferences.get('place');

  function lines(row, column) {
    var cell = row.cells[column];
    return cell ? Swardbook.list(cell.querySelectorAll('.sb-when-table__line')).map(function (each) { return each.textContent; }) : [];
  }

  function show() {
    var row = document.querySelector('.sb-when-table [data-place="' + select.value + '"]');
    if (!row) return;
    var best = lines(row, 2), all = lines(row, 1);
    parts.dates.textContent = '';
    all.forEach(function (dates, at) {
      parts.dates.appendChild(Swardbook.element('strong', '', dates));
      parts.dates.appendChild(document.createTextNode(', best ' + best[at] + (at < all.length - 1 ? '; ' : '.')));
    });
    if (!all.length) parts.dates.appendChild(Swardbook.element('strong', '', 'no window.'));
  }

  select.hidden = false;
  parts.home.hidden = true;
  if (Swardbook.choose(select, yours)) show(); else select.value = Swardbook.list(select.options).filter(function (each) { return each.defaultSelected; })[0].value;
  document.addEventListener('swardbook:lawn-chosen', function () { if (Swardbook.choose(select, Swardbook.preferences.get('place'))) show(); });
  select.addEventListener('change', function () {
    Swardbook.preferences.set('place', select.value);
    show();
  });
});
