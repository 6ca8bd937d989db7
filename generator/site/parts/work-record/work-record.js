/* The work record on screen: an entry is put down, changed, taken off and brought back; nitrogen adds up by lawn and year with the
   calculator's own formula, so that page and command line give one answer. */
(function () {
  'use strict';
  var LARGEST_FILE = 2e6;
  var MOST_TOLD = 100;
  var VERDICTS = Swardbook.contract['work-record'].range, isUs = Swardbook.readerUnits.us;

  function pretty(text) { return Swardbook.calculator.pretty(text); }

  function start(root) {
    var spec = Swardbook.workRecord;
    var calculator = spec && (Swardbook.calculators || {})[spec.calculator];
    if (!calculator) return; /* Its columns are not on this page: the form stays as printed. */
    var columns = spec.columns.map(function (column) { return column.id; });
    var parts = Swardbook.parts(root), boxes = {}, editing = null, undo = null, notice = null, rows = Swardbook.kept('record'), given = Swardbook.recordGiven;
    Swardbook.each(root, '[data-column]', function (each) { boxes[each.getAttribute('data-column')] = each; });

    function input(id) { return boxes[id].querySelector('[data-entry]'); }
    function columnOf(id) { return spec.columns[columns.indexOf(id)]; }
    function wordsOf(id, value) {
      var option = Array.prototype.filter.call(input(id).options || [], function (each) { return each.value === value; })[0];
      return option ? option.textContent : value;
    }
    function usual(column) { return Swardbook.readerUnits.of(column.unit, column.us); }

    function problem(id, sentence) {
      var place = boxes[id].querySelector('[data-part=problem]');
      place.textContent = sentence;
      place.hidden = !sentence;
      Swardbook.markInvalid(input(id), sentence);
    }

    function showWork() {
      columns.forEach(function (id) {
        var work = boxes[id].getAttribute('data-work');
        boxes[id].hidden = Boolean(work) && work !== input('work').value;
      });
    }

    /* The unit goes beside a bare number, so that switching units cannot change what was done. */
    function withUnit(id) {
      var column = columnOf(id);
      if (column.kind === 'number') input(id).value = Swardbook.readerUnits.beside(input(id).value, usual(column));
    }

    function typed() {
      var entry = {};
      columns.forEach(function (id) {
        withUnit(id);
        var value = input(id).value.replace(/\s+/g, ' ').trim();
        if (value && !boxes[id].hidden) entry[id] = value;
        /* A choice that this book has not cannot be shown in its list, and is not lost with that. */
        if (!value && editing && editing[id] && wordsOf(id, editing[id]) === editing[id] && input(id).options) entry[id] = editing[id];
      });
      return entry;
    }

    /* What this book has columns for; the rest of a row stays as it is. */
    function entries() {
      return rows.all().map(function (each) {
        var entry = { id: each.id };
        columns.forEach(function (id) { if (each.row[id]) entry[id] = each.row[id]; });
        return entry;
      });
    }

    function fields(entry) {
      var row = Object.assign({}, entry);
      delete row.id;
      return row;
    }

    function fill(entry) {
      columns.forEach(function (id) {
        input(id).value = entry[id] || '';
        if (id === 'work' && !entry.work) input(id).selectedIndex = 0;
        problem(id, '');
      });
      showWork();
    }

    /* Something was done, and `back` does it backwards. */
    function done(said, back) {
      undo = back;
      parts.told.textContent = said;
      parts.undo.hidden = !back;
      write();
    }

    function finish() {
      var was = typed();
      editing = null;
      notice.say('');
      parts.save.textContent = 'Save this entry';
      parts.cancel.hidden = true;
      fill(Object.assign({ work: was.work, date: was.date, applied_by: was.applied_by, licence_number: was.licence_number }, given.ofLawn()));
    }

    function save() {
      var entry = typed(), first = null;
      columns.forEach(function (id) {
        var stays = editing && editing[id] && editing[id] === entry[id];
        var wrong = boxes[id].hidden || stays ? '' : Swardbook.workKept.fault(columnOf(id), entry[id] || '', spec.grasses);
        problem(id, wrong);
        if (wrong && !first) first = id;
      });
      if (!first && editing === null && !rows.room()) {
        parts.told.textContent = 'The record holds ' + rows.most + ' entries, and no more fit. Export it, then remove old entries.';
        return;
      }
      if (first) {
        parts.told.textContent = 'Not saved yet: see the marked fields.';
        input(first).focus();
        return;
      }
      if (editing === null) add([entry], title(entry) + ' is saved.');
      else if (!changed(editing, entry)) return;
      finish();
    }

    function add(fresh, said) {
      var ids = [];
      rows.together(function () { ids = fresh.map(function (entry) { return rows.add(entry); }); });
      done(said, function () { rows.together(function () { ids.forEach(rows.remove); }); });
    }

    /* Only what was changed here goes in, whatever another tab did to the entry meanwhile. */
    function changed(before, entry) {
      if (!rows.change(before.id, fields(before), entry)) { gone(); return false; }
      done(title(entry) + ' is changed.', function () { rows.change(before.id, entry, fields(before)); });
      return true;
    }

    /* The entry that stands in the form was taken off in another tab. */
    function gone() {
      notice.say('This entry was taken off the record in another tab. What you typed is still here.', [
        ['Keep it as a new entry', function () { editing = null; save(); }], ['Discard it', function () { finish(); parts.told.textContent = ''; }]
      ]);
    }

    function title(entry) { return entry.date + ', ' + entry.lawn + ': ' + wordsOf('work', entry.work).toLowerCase() + ', ' + entry.product; }

    function button(words, about, act) {
      var made = Swardbook.button(words, act);
      Swardbook.add(made, 'span', 'sb-hidden', ': ' + about);
      return made;
    }

    function change(entry) {
      editing = entry;
      fill(entry);
      parts.save.textContent = 'Keep the change';
      parts.cancel.hidden = false;
      parts.told.textContent = 'Changing ' + title(entry) + '.';
      input('date').focus();
    }

    function row(entry) {
      var made = Swardbook.element('li', 'sb-work-record__row');
      var words = made.appendChild(Swardbook.element('div'));
      var rest = columns.filter(function (id) { return entry[id] && ['work', 'date', 'lawn', 'product'].indexOf(id) < 0; }).map(function (id) {
        return columnOf(id).label + ': ' + (columnOf(id).kind === 'choice' || columnOf(id).kind === 'grass' ? wordsOf(id, entry[id]) : pretty(entry[id]));
      });
      words.appendChild(Swardbook.element('strong', '', title(entry)));
      words.appendChild(Swardbook.element('div', 'sb-note', rest.join('; ')));
      made.appendChild(button('Change', title(entry), function () { change(entry); }));
      made.appendChild(button('Take off', title(entry), function () {
        if (editing && editing.id === entry.id) finish();
        var removed = rows.remove(entry.id);
        done(title(entry) + ' is taken off.', removed && function () { rows.restore(removed); });
        parts.undo.focus();
      }));
      return made;
    }

    function amount(si) {
      var show = Swardbook.calculator.show;
      return pretty(isUs() ? show(si, 'lb/1000 ft2', 2) : show(si, 'g/m2', 2) + ' (' + show(si, 'kg/100 m2', 3) + ')');
    }

    function yearRow(year) {
      var made = Swardbook.element('li'), range = Swardbook.own(spec.grasses, year.grass) ? spec.grasses[year.grass] : null;
      var feeds = year.feeds === 1 ? '1 feed' : year.feeds + ' feeds';
      made.appendChild(Swardbook.element('strong', '', year.lawn + ', ' + year.year + ': '));
      made.appendChild(Swardbook.element('span', 'sb-work-record__total', amount(year.si)));
      made.appendChild(document.createTextNode(' of nitrogen in ' + feeds + '.'));
      if (range) {
        var unit = isUs() ? 'lb/1000 ft2' : 'g/m2', show = Swardbook.calculator.show, is = Swardbook.recordYears.verdict(year, range);
        made.appendChild(Swardbook.element('div', 'sb-work-record__verdict sb-work-record__verdict--' + is,
          pretty(wordsOf('grass', year.grass) + ': ' + VERDICTS[is] + ', ' + show(range[0], unit, 1).split(' ')[0] + ' to ' + show(range[1], unit, 1) + ' a year.')));
      }
      year.left.forEach(function (each) { made.appendChild(Swardbook.element('div', 'sb-note', 'Not counted: ' + each.date + ', ' + each.why)); });
      return made;
    }

    function write() {
      var all = entries(), sums = Swardbook.recordYears.years(calculator, all);
      var latest = all.map(function (entry, at) { return { entry: entry, at: at }; }).sort(function (a, b) {
        return a.entry.date === b.entry.date ? b.at - a.at : a.entry.date < b.entry.date ? 1 : -1;
      });
      Swardbook.relist(parts.list, latest.map(function (each) { return each.entry; }), row);
      parts.years.textContent = '';
      sums.forEach(function (year) { parts.years.appendChild(yearRow(year)); });
      parts.list.hidden = parts.export.hidden = !all.length;
      parts.none.hidden = all.length > 0;
      parts.years.hidden = !sums.length;
      parts['no-feed'].hidden = sums.length > 0;
    }

    function inFile() { return { name: 'work-record.csv', kind: 'text/csv;charset=utf-8', text: Swardbook.recordCsv.write(columns, entries()) }; }

    function download() {
      var file = inFile();
      Swardbook.download(file.name, file.kind, file.text);
    }

    function take(text) {
      var read = Swardbook.recordCsv.read(text, columns), faults = read.faults.slice(), have = new Set(entries().map(asKey)), fresh = [], same = 0;
      read.entries.forEach(function (each) {
        var wrong = spec.columns.map(function (column) {
          var sentence = Swardbook.workKept.fault(column, each.entry[column.id] || '', spec.grasses);
          return sentence && column.label + ': ' + sentence;
        }).filter(Boolean);
        if (wrong.length) faults.push('Line ' + each.line + ': ' + wrong[0]);
        else if (have.has(asKey(each.entry))) same += 1;
        else { have.add(asKey(each.entry)); fresh.push(each.entry); }
      });
      var wrong = faults.length, said = '', over = Math.max(0, fresh.length - rows.room());
      fresh = fresh.slice(0, fresh.length - over);
      parts.faults.textContent = '';
      if (faults.length > MOST_TOLD) faults = faults.slice(0, MOST_TOLD).concat(['And ' + (faults.length - MOST_TOLD) + ' more.']);
      faults.forEach(function (each) { parts.faults.appendChild(Swardbook.element('li', '', each)); });
      parts.faults.hidden = !faults.length;
      said = (fresh.length === 1 ? '1 entry is taken in' : fresh.length + ' entries are taken in') + (same ? '; ' + same + ' were here already' : '') + (wrong ? '; ' + wrong + ' could not be read' : '') +
        (over ? '; ' + over + ' did not fit, because the record holds ' + rows.most + ' entries' : '') + '.';
      if (fresh.length) add(fresh, said);
      else parts.told.textContent = said;
    }

    function asKey(entry) { return JSON.stringify(columns.map(function (id) { return entry[id] || ''; })); }

    parts.form.addEventListener('submit', function (event) { event.preventDefault(); save(); });
    parts.form.addEventListener('change', function (event) {
      var box = event.target.closest('[data-column]');
      if (!box) return;
      withUnit(box.getAttribute('data-column'));
      showWork();
    });
    parts.cancel.addEventListener('click', function () { finish(); parts.told.textContent = ''; });
    parts.undo.addEventListener('click', function () {
      undo();
      done('Everything is as it was before.', null);
      input('date').focus(); /* The button is gone with what it undid. */
    });
    parts.export.addEventListener('click', download);
    parts.print.addEventListener('click', function () {
      var was = typed();
      window.addEventListener('afterprint', function () { fill(was); }, { once: true });
      fill({});
      window.print();
    });
    parts.file.addEventListener('change', function () {
      var file = parts.file.files[0];
      if (!file) return;
      if (file.size > LARGEST_FILE) { parts.told.textContent = 'That file is too large for a work record.'; return; }
      file.text().then(take, function () { parts.told.textContent = 'That file could not be read.'; });
      parts.file.value = '';
    });
    rows.follow(function () {
      write();
      if (editing && !rows.get(editing.id)) gone();
    });
    document.addEventListener('swardbook:units', write);

    /* Another lawn is chosen: an entry that is not begun is for that one. */
    document.addEventListener('swardbook:lawn-chosen', function () { if (!editing && !typed().product) fill(Object.assign(typed(), given.ofLawn())); });

    notice = Swardbook.keptNotice(root, 'record', inFile);
    fill(Object.assign(given.ofLawn(), given.ofAddress(columns)));
    parts.ways.hidden = parts.body.hidden = false;
    showWork();
    write();
  }

  Swardbook.component('work-record', start);
})();
