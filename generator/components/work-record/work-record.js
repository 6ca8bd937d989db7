/* The work record on screen: an entry is put down, changed, taken off and brought back; nitrogen adds up by lawn and year with the
   calculator's own formula, so that page and command line give one answer. */
(function () {
  'use strict';
  var BARE = /^[\s\d.,\/+½¼¾⅓⅔⅛⅜⅝⅞−–-]+$/;
  var SLACK = 1e-9;
  var LARGEST_FILE = 2e6;
  var VERDICTS = { under: 'less than it is usually given', within: 'within what it is usually given', over: 'more than it is usually given' };

  function isUs() { return document.documentElement.getAttribute('data-units') === 'us'; }
  function pretty(text) { return Swardbook.calculator.pretty(text); }

  /* {si} or {why} of one feed, by the calculator's formula. */
  function nitrogenOf(calculator, entry) {
    var typed = {};
    if (!entry.area) return { why: 'its area is not put down' };
    if (!entry.amount) return { why: 'the product used is not put down' };
    if (!entry.nitrogen_percent) return { why: 'the nitrogen on the bag is not put down' };
    calculator.inputs.forEach(function (input) { typed[input.name] = { text: '0', unit: input.unit }; });
    typed.product.text = entry.amount;
    typed.area.text = entry.area;
    typed.nitrogen_percent.text = entry.nitrogen_percent;
    var run = Swardbook.calculator.run(calculator, typed);
    var wrong = run.problems.product || run.problems.area || run.problems.nitrogen_percent || run.noAnswer.nitrogen_rate;
    return wrong ? { why: wrong } : { si: run.results.nitrogen_rate };
  }

  /* [{lawn, year, si, feeds, left: [{date, why}], grass}] by lawn and year. */
  function years(calculator, entries) {
    var found = new Map();
    entries.forEach(function (entry) {
      if (entry.work !== 'feed') return;
      var key = entry.lawn + ' ' + entry.date.slice(0, 4);
      var year = found.get(key) || { key: key, lawn: entry.lawn, year: entry.date.slice(0, 4), si: 0, feeds: 0, left: [], grass: '' };
      var nitrogen = nitrogenOf(calculator, entry);
      if (nitrogen.why) year.left.push({ date: entry.date, why: nitrogen.why });
      else { year.si += nitrogen.si; year.feeds += 1; }
      year.grass = entry.grass || year.grass;
      found.set(key, year);
    });
    return Array.from(found.values()).sort(function (a, b) { return a.key < b.key ? -1 : 1; });
  }

  function verdict(year, range) {
    return year.si < range[0] * (1 - SLACK) ? 'under' : year.si > range[1] * (1 + SLACK) ? 'over' : 'within';
  }

  function start(root) {
    var spec = Swardbook.workRecord;
    var calculator = spec && (Swardbook.calculators || {})[spec.calculator];
    if (!calculator) return; /* Its columns are not on this page: the form stays as printed. */
    var columns = spec.columns.map(function (column) { return column.id; });
    var parts = {}, boxes = {}, editing = null, before = null;
    var found = Swardbook.workKept.read(spec), entries = found.entries;
    Array.prototype.forEach.call(root.querySelectorAll('[data-part]'), function (each) { parts[each.getAttribute('data-part')] = each; });
    Array.prototype.forEach.call(root.querySelectorAll('[data-column]'), function (each) { boxes[each.getAttribute('data-column')] = each; });

    function input(id) { return boxes[id].querySelector('[data-entry]'); }
    function columnOf(id) { return spec.columns[columns.indexOf(id)]; }
    function wordsOf(id, value) {
      var option = Array.prototype.filter.call(input(id).options, function (each) { return each.value === value; })[0];
      return option ? option.textContent : value;
    }
    function usual(column) { return isUs() ? column.us : column.unit; }

    function problem(id, sentence) {
      var place = boxes[id].querySelector('[data-part=problem]');
      place.textContent = sentence;
      place.hidden = !sentence;
      if (sentence) input(id).setAttribute('aria-invalid', 'true');
      else input(id).removeAttribute('aria-invalid');
    }

    function showWork() {
      columns.forEach(function (id) {
        var work = boxes[id].getAttribute('data-work');
        boxes[id].hidden = Boolean(work) && work !== input('work').value;
      });
    }

    /* The unit goes beside a bare number, so that switching units cannot change what was done. */
    function withUnit(id) {
      var column = columnOf(id), text = input(id).value.trim();
      if (column.kind === 'number' && text && BARE.test(text)) input(id).value = text + ' ' + usual(column);
    }

    function typed() {
      var entry = {};
      columns.forEach(function (id) {
        withUnit(id);
        var value = input(id).value.replace(/\s+/g, ' ').trim();
        if (value && !boxes[id].hidden) entry[id] = value;
      });
      return entry;
    }

    function fill(entry) {
      columns.forEach(function (id) {
        input(id).value = entry[id] || '';
        if (id === 'work' && !entry.work) input(id).selectedIndex = 0;
        problem(id, '');
      });
      showWork();
    }

    function keep(wanted, said) {
      before = entries;
      entries = wanted;
      var notice = Swardbook.workKept.write(entries);
      parts.notice.textContent = notice;
      parts.notice.hidden = !notice;
      parts.told.textContent = said;
      parts.undo.hidden = false;
      write();
    }

    function finish() {
      var was = typed();
      editing = null;
      parts.save.textContent = 'Put it down';
      parts.cancel.hidden = true;
      fill({ work: was.work, date: was.date, applied_by: was.applied_by, licence_number: was.licence_number });
    }

    function save() {
      var entry = typed(), first = null;
      columns.forEach(function (id) {
        var wrong = boxes[id].hidden ? '' : Swardbook.workKept.fault(columnOf(id), entry[id] || '', spec.grasses);
        problem(id, wrong);
        if (wrong && !first) first = id;
      });
      if (!first && editing === null && entries.length >= Swardbook.workKept.most) {
        parts.told.textContent = 'The record is full. Export it, then take off what is old.';
        return;
      }
      if (first) {
        parts.told.textContent = 'Not put down yet: see the marked fields.';
        input(first).focus();
        return;
      }
      var at = editing === null ? -1 : entries.indexOf(editing);
      var list = entries.slice();
      if (at < 0) list.push(entry);
      else list[at] = entry;
      keep(list, title(entry) + (at < 0 ? ' is put down.' : ' is changed.'));
      finish();
    }

    function title(entry) { return entry.date + ', ' + entry.lawn + ': ' + wordsOf('work', entry.work).toLowerCase() + ', ' + entry.product; }

    function button(words, about, act) {
      var made = Swardbook.element('button', 'sb-button sb-button--quiet', words);
      made.type = 'button';
      made.appendChild(Swardbook.element('span', 'sb-hidden', ': ' + about));
      made.addEventListener('click', act);
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
        keep(entries.filter(function (each) { return each !== entry; }), title(entry) + ' is taken off.');
        if (editing === entry) finish();
        parts.undo.focus();
      }));
      return made;
    }

    function amount(si) {
      var show = Swardbook.calculator.show;
      return pretty(isUs() ? show(si, 'lb/1000 ft2', 2) : show(si, 'g/m2', 2) + ' (' + show(si, 'kg/100 m2', 3) + ')');
    }

    function yearRow(year) {
      var made = Swardbook.element('li'), range = Object.prototype.hasOwnProperty.call(spec.grasses, year.grass) ? spec.grasses[year.grass] : null;
      var feeds = year.feeds === 1 ? '1 feed' : year.feeds + ' feeds';
      made.appendChild(Swardbook.element('strong', '', year.lawn + ', ' + year.year + ': '));
      made.appendChild(Swardbook.element('span', 'sb-work-record__total', amount(year.si)));
      made.appendChild(document.createTextNode(' of nitrogen in ' + feeds + '.'));
      if (range) {
        var unit = isUs() ? 'lb/1000 ft2' : 'g/m2', show = Swardbook.calculator.show, is = verdict(year, range);
        made.appendChild(Swardbook.element('div', 'sb-work-record__verdict sb-work-record__verdict--' + is,
          pretty(wordsOf('grass', year.grass) + ': ' + VERDICTS[is] + ', ' + show(range[0], unit, 1).split(' ')[0] + ' to ' + show(range[1], unit, 1) + ' a year.')));
      }
      year.left.forEach(function (each) { made.appendChild(Swardbook.element('div', 'sb-note', 'Not counted: ' + each.date + ', ' + each.why)); });
      return made;
    }

    function write() {
      var sums = years(calculator, entries);
      var latest = entries.map(function (entry, at) { return { entry: entry, at: at }; }).sort(function (a, b) {
        return a.entry.date === b.entry.date ? b.at - a.at : a.entry.date < b.entry.date ? 1 : -1;
      });
      parts.list.textContent = '';
      latest.forEach(function (each) { parts.list.appendChild(row(each.entry)); });
      parts.years.textContent = '';
      sums.forEach(function (year) { parts.years.appendChild(yearRow(year)); });
      parts.list.hidden = parts.export.hidden = !entries.length;
      parts.none.hidden = entries.length > 0;
      parts.years.hidden = !sums.length;
      parts['no-feed'].hidden = sums.length > 0;
    }

    function download() {
      Swardbook.download('work-record.csv', 'text/csv;charset=utf-8', Swardbook.recordCsv.write(columns, entries));
    }

    function take(text) {
      var read = Swardbook.recordCsv.read(text, columns), faults = read.faults.slice(), have = new Set(entries.map(asKey)), fresh = [], same = 0;
      read.entries.forEach(function (each) {
        var wrong = spec.columns.map(function (column) {
          var sentence = Swardbook.workKept.fault(column, each.entry[column.id] || '', spec.grasses);
          return sentence && column.label + ': ' + sentence;
        }).filter(Boolean);
        if (wrong.length) faults.push('Line ' + each.line + ': ' + wrong[0]);
        else if (have.has(asKey(each.entry))) same += 1;
        else { have.add(asKey(each.entry)); fresh.push(each.entry); }
      });
      if (entries.length + fresh.length > Swardbook.workKept.most) { faults.push('The record would hold more than ' + Swardbook.workKept.most + ' entries; nothing is taken in.'); fresh = []; }
      parts.faults.textContent = '';
      faults.slice(0, 20).forEach(function (each) { parts.faults.appendChild(Swardbook.element('li', '', each)); });
      parts.faults.hidden = !faults.length;
      var said = (fresh.length === 1 ? '1 entry is taken in' : fresh.length + ' entries are taken in') + (same ? '; ' + same + ' stood here already' : '') + (faults.length ? '; ' + faults.length + ' could not be read' : '') + '.';
      if (fresh.length) keep(entries.concat(fresh), said);
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
    parts.undo.addEventListener('click', function () { keep(before, 'It is as it was before.'); });
    parts.export.addEventListener('click', download);
    parts.print.addEventListener('click', function () { fill({}); window.print(); });
    parts.file.addEventListener('change', function () {
      var file = parts.file.files[0];
      if (!file) return;
      if (file.size > LARGEST_FILE) { parts.told.textContent = 'That file is too large for a work record.'; return; }
      file.text().then(take);
      parts.file.value = '';
    });
    window.addEventListener('storage', function (event) {
      if (event.key !== Swardbook.workKept.key && event.key !== null) return;
      entries = Swardbook.workKept.read(spec).entries;
      write();
    });
    document.addEventListener('swardbook:units', write);

    parts.notice.textContent = found.notice;
    parts.notice.hidden = !found.notice;
    parts.ways.hidden = parts.body.hidden = false;
    showWork();
    write();
  }

  /* This script stands in the page, and may be read before the one that every page has. */
  if (window.Swardbook && Swardbook.component) Swardbook.component('work-record', start);
  else window.addEventListener('load', function () { Swardbook.component('work-record', start); });
})();
