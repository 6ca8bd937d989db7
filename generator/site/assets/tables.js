/* Tables on any page. On a telephone a table of three columns or more is laid out as a card a row (tables.css): each cell says its own
   column then, and the parts say what they are, because a browser may forget that of a table laid out otherwise. Rows come and go with
   what a reader chooses, so we watch for them. A month to write in stays a grid. The theme wraps each table of a written page in a box
   that scrolls sideways; who uses a keyboard must be able to reach that box, and each needs a name of its own. */
(function () {
  /* A table that fits with more columns than usual says from how many on it does not: data-cards-from. */
  var FEWEST_COLUMNS = 3, count = 0;
  var ROLES = { THEAD: 'rowgroup', TBODY: 'rowgroup', TFOOT: 'rowgroup', TR: 'row', TD: 'cell' };

  function named(wrap) {
    if (wrap.hasAttribute('tabindex') || wrap.closest('.sb-table')) return;
    count += 1;
    var heading = wrap.previousElementSibling;
    while (heading && !/^H[1-6]$/.test(heading.tagName)) heading = heading.previousElementSibling;
    wrap.setAttribute('tabindex', '0');
    wrap.setAttribute('role', 'region');
    wrap.setAttribute('aria-label', 'Table ' + count + (heading ? ': ' + heading.textContent.trim() : ''));
  }

  /* A heading in both systems of units, without what a page hides of it. */
  function labelOf(heading, us) {
    if (!heading.firstElementChild) return heading.textContent.replace(/\s+/g, ' ').trim();
    var copy = heading.cloneNode(true);
    Swardbook.each(copy, '.sb-quantity__us', function (each) {
      var metric = each.parentElement.querySelector('.sb-quantity__metric');
      if (us) metric.remove(); else each.remove();
    });
    Swardbook.each(copy, '.sb-quantity__bracket, .sb-hidden, button', function (each) { each.remove(); });
    return copy.textContent.replace(/\s+/g, ' ').trim();
  }

  function isHeadings(row) {
    return Swardbook.list(row.cells).every(function (cell) { return cell.tagName === 'TH' && cell.scope === 'col'; });
  }

  function put(element, name, value) {
    if (element.getAttribute(name) !== value) element.setAttribute(name, value);
  }

  function role(cell) {
    return cell.tagName === 'TD' ? 'cell' : /^row/.test(cell.scope) ? 'rowheader' : 'columnheader';
  }

  /* The heading over each column; of a row of headings within the table, over the rows below it. */
  function headingsOf(row) {
    var over = [];
    Swardbook.each(row, ':scope > th, :scope > td', function (cell) {
      for (var each = 0; each < cell.colSpan; each += 1) over.push({ metric: labelOf(cell, false), us: labelOf(cell, true), hidden: cell.hidden });
    });
    return over;
  }

  function laidOut(table) {
    var over = null;
    Swardbook.list(table.rows).forEach(function (row) {
      if (isHeadings(row)) {
        over = headingsOf(row);
        if (row.parentElement.tagName !== 'THEAD') put(row, 'data-headings', '');
      }
    });
    if (!over) return;
    var shown = over.filter(function (each) { return !each.hidden; }).length;
    var cards = shown >= Number(table.getAttribute('data-cards-from') || FEWEST_COLUMNS);
    table.toggleAttribute('data-cards', cards);
    /* Not asked for by :has() in the style: with that, a browser looks at every table again whenever one changes. */
    ['div.sb-table', '.md-typeset__scrollwrap'].forEach(function (kind) {
      var box = table.closest(kind);
      if (box) box.toggleAttribute('data-holds-cards', cards);
    });
    if (!cards) return;
    put(table, 'role', 'table');
    Swardbook.list(table.rows).forEach(function (row) {
      put(row.parentElement, 'role', ROLES[row.parentElement.tagName]);
      put(row, 'role', ROLES.TR);
      var headings = isHeadings(row), column = 0;
      if (headings) over = headingsOf(row);
      Swardbook.list(row.cells).forEach(function (cell) {
        put(cell, 'role', role(cell));
        if (!headings && cell.tagName === 'TD' && over[column]) {
          put(cell, 'data-label', over[column].metric);
          if (over[column].us !== over[column].metric) put(cell, 'data-label-us', over[column].us);
        }
        column += cell.colSpan;
      });
    });
  }

  function isGrid(table) { return table.matches('.sb-month-sheet__days, [data-stays-table]'); }

  function all(root) {
    Swardbook.each(root, '.md-typeset__scrollwrap', named);
    Swardbook.each(root, 'table', function (table) { if (!isGrid(table)) laidOut(table); });
  }

  function changed(records) {
    var tables = [];
    records.forEach(function (record) {
      var table = record.target.closest && record.target.closest('table');
      if (table && (record.type === 'childList' || record.target.tagName === 'TH')) tables.push(table);
      Swardbook.list(record.addedNodes).forEach(function (node) {
        if (node.nodeType === 1 && !table) all(node.matches('table, .md-typeset__scrollwrap') ? node.parentElement || node : node);
      });
    });
    tables.filter(function (table, at) { return tables.indexOf(table) === at && table.isConnected && !isGrid(table); }).forEach(laidOut);
  }

  var content = document.querySelector('.md-content');
  if (!content) return;
  all(content);
  if (window.MutationObserver) new MutationObserver(changed).observe(content, { childList: true, subtree: true, attributeFilter: ['hidden'] });
})();
