/* Lays the days of each month under weekdays, for the year a reader chose; prints one month or all twelve. */
(function () {
  var weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

  /* 'en-US' readers begin the week on Sunday unless they chose otherwise. */
  function firstWeekday() {
    var chosen = Swardbook.preferences.get('week-begins');
    if (chosen === '0' || chosen === '1') return Number(chosen);
    return navigator.language === 'en-US' ? 0 : 1;
  }

  function yearOrNull(text) {
    var year = Number(text);
    return /^\d{4}$/.test(text) && year >= 1900 && year <= 2200 ? year : null;
  }

  /* Fills one sheet: a header of weekdays, then each day in its column. */
  function fill(sheet, year, begins) {
    var month = Number(sheet.getAttribute('data-month')) - 1;
    var days = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
    var blanks = (new Date(Date.UTC(year, month, 1)).getUTCDay() - begins + 7) % 7;
    var table = sheet.querySelector('.sb-month-sheet__days');
    var head = document.createElement('thead');
    var row = head.appendChild(document.createElement('tr'));
    for (var column = 0; column < 7; column += 1) {
      var name = weekdays[(column + begins) % 7];
      var cell = Swardbook.element('th', '', name.slice(0, 3));
      cell.setAttribute('scope', 'col');
      cell.setAttribute('abbr', name);
      row.appendChild(cell);
    }
    var body = document.createElement('tbody');
    for (var place = 0; place < Math.ceil((blanks + days) / 7) * 7; place += 1) {
      if (place % 7 === 0) row = body.appendChild(document.createElement('tr'));
      var day = place - blanks + 1;
      var box = row.appendChild(document.createElement('td'));
      if (day >= 1 && day <= days) box.appendChild(Swardbook.element('span', 'sb-month-sheet__day', day));
    }
    if (table.tHead) table.tHead.remove();
    table.replaceChild(body, table.tBodies[0]);
    table.insertBefore(head, body);
    sheet.querySelector('.sb-month-sheet__year').textContent = ' ' + year;
  }

  Swardbook.component('month-sheet-controls', function (root) {
    var year = root.querySelector('#sheet-year');
    var week = root.querySelector('#sheet-week');
    var say = root.querySelector('.sb-month-sheet-controls__say');
    var sheets = Swardbook.list(document.querySelectorAll('.sb-month-sheet'));

    function fillAll() {
      var chosen = yearOrNull(year.value);
      say.textContent = chosen === null ? 'Type a four-digit year between 1900 and 2200.' : '';
      if (chosen === null) return;
      sheets.forEach(function (sheet) { fill(sheet, chosen, Number(week.value)); });
    }

    year.value = yearOrNull(Swardbook.preferences.get('year') || '') || new Date().getFullYear();
    week.value = String(firstWeekday());
    year.addEventListener('input', function () {
      if (yearOrNull(year.value) !== null) Swardbook.preferences.set('year', year.value);
      fillAll();
    });
    week.addEventListener('change', function () {
      Swardbook.preferences.set('week-begins', week.value);
      fillAll();
    });
    root.addEventListener('submit', function (event) { event.preventDefault(); });
    root.querySelector('[data-print-year]').addEventListener('click', function () { window.print(); });
    root.hidden = false;
    fillAll();
  });

  Swardbook.component('month-sheet', function (sheet) {
    var button = sheet.querySelector('[data-print-month]');
    var hidden = [];

    /* Everything that is not this sheet, or around it, stays off the paper. */
    function hideTheRest() {
      for (var node = sheet; node && node !== document.body; node = node.parentElement) {
        Swardbook.list(node.parentElement.children).forEach(function (other) {
          if (other === node || other.hasAttribute('data-print-hidden')) return;
          other.setAttribute('data-print-hidden', '');
          hidden.push(other);
        });
      }
    }

    function restore() {
      hidden.splice(0).forEach(function (node) { node.removeAttribute('data-print-hidden'); });
    }

    window.addEventListener('afterprint', restore);
    button.addEventListener('click', function () {
      hideTheRest();
      window.print();
    });
    button.hidden = false;
  });
})();
