/* The lawns that are kept, and the form that writes one down. How they are kept stands in assets/store/5-kept.js, which one is chosen in
   assets/lawns.js; lawn-file.js has them out and in, lawn-photographs.js their photographs. */
(function () {
  'use strict';
  var add = Swardbook.add, own = Swardbook.own, PLAIN = ['code', 'grass', 'place', 'site', 'area', 'town', 'travel'];
  var UNITS = { area: ['m2', 'ft2'], travel: ['min', 'min'] };

  function start(root) {
    var parts = Swardbook.parts(root), lawns = Swardbook.lawns, rows = lawns.rows(), plans = JSON.parse(root.dataset.plans), editing = null, undo = null, fields = {};
    var photographs = Swardbook.lawnPhotographs(root, say);
    Swardbook.each(root, '[data-field]', function (box) { fields[box.dataset.field] = box; });
    var facts = Object.keys(fields).filter(function (id) { return fields[id].hasAttribute('data-fact'); });

    function input(id) { return fields[id].querySelector('input, select'); }
    function chosenWords(id, value) {
      var option = Swardbook.list(input(id).options).filter(function (each) { return each.value === value; })[0];
      return option ? option.textContent : value;
    }

    function question(id) {
      var spec = Swardbook.inspectionSheet;
      return spec ? spec.questions.filter(function (each) { return each.id === id; })[0] : null;
    }

    function unitOf(id) {
      var pair = UNITS[id], asked = pair ? null : question(id);
      return pair ? Swardbook.readerUnits.of(pair[0], pair[1]) : asked && asked.unit ? Swardbook.readerUnits.of(asked.unit, asked.us) : null;
    }

    /* Something was done, and `back` does it backwards. */
    function say(words, back) {
      undo = back || null;
      parts.told.textContent = words;
      parts.undo.hidden = !back;
    }

    /* What stands in the form, as a row. Pieces are put on where a lawn is measured, and stay. */
    function typed() {
      var row = { facts: {}, machines: Swardbook.list(root.querySelectorAll('[data-part=machines] input:checked')).map(function (each) { return each.value; }) };
      PLAIN.forEach(function (id) { if (input(id).value.trim()) { row[id] = Swardbook.readerUnits.beside(input(id).value, unitOf(id)); } });
      facts.forEach(function (id) { if (input(id).value.trim()) { row.facts[id] = Swardbook.readerUnits.beside(input(id).value, unitOf(id)); } });
      if (editing) { row.pieces = editing.pieces; }
      return row;
    }

    function fill(row) {
      PLAIN.forEach(function (id) {
        if (row[id] !== undefined || ['grass', 'place', 'site'].indexOf(id) < 0) { input(id).value = row[id] || ''; }
        if (input(id).tagName === 'SELECT' && row[id] && input(id).value !== row[id]) { another(input(id), row[id]); }
      });
      facts.forEach(function (id) { input(id).value = own(row.facts, id) ? row.facts[id] : ''; });
      Swardbook.each(root, '[data-part=machines] input', function (each) { each.checked = (row.machines || []).indexOf(each.value) >= 0; });
    }

    /* A grass or a place that only another book has stays what it is. */
    function another(select, value) {
      var option = add(select, 'option', '', value + ' (not in this book)');
      option.value = value;
      select.value = value;
    }

    function isCode(text) { return new RegExp('^' + Swardbook.contract.kept.lawn + '$').test(text); }

    /* Why this is no lawn yet: [id of the field, sentence], or null. */
    function wrong(row) {
      var code = row.code || '', other = lawns.byCode(code), area = null;
      if (!isCode(code)) { return ['code', 'A lawn needs a code of letters, digits and hyphens, such as TL-014.']; }
      if (other && (!editing || other.id !== editing.id)) { return ['code', 'There is a lawn ' + code + ' already. Change that one, or give this one another code.']; }
      try {
        if (row.area) { area = Swardbook.quantity.read(row.area, 'm2'); }
      } catch (problem) { return ['area', Swardbook.sentenceOf(problem)]; }
      if (area !== null && !Swardbook.kept.isArea(area)) { return ['area', lawns.noArea]; }
      try {
        if (row.travel) { Swardbook.quantity.read(row.travel, 'min'); }
      } catch (problem) { return ['travel', Swardbook.sentenceOf(problem)]; }
      var troubles = Swardbook.inspectionSheet ? Swardbook.inspection.findings(Swardbook.inspectionSheet, row.facts).troubles : {};
      var first = Object.keys(troubles)[0];
      return first ? [first, troubles[first]] : null;
    }

    function refuse(found) {
      Object.keys(fields).forEach(function (id) { Swardbook.markInvalid(input(id), Boolean(found) && found[0] === id); });
      parts.problem.textContent = found ? found[1] : '';
      parts.problem.hidden = !found;
      if (!found) { return; }
      var more = input(found[0]).closest('details');
      if (more) { more.open = true; }
      input(found[0]).focus();
    }

    function finish() {
      editing = null;
      parts.title.textContent = 'A new lawn';
      parts.save.textContent = 'Keep this lawn';
      parts.cancel.hidden = true;
      fill({ grass: input('grass').value, place: input('place').value, site: input('site').options[0].value, town: input('town').value });
      refuse(null);
    }

    function save() {
      var row = typed(), found = wrong(row);
      if (!found && !editing && !rows.room()) { found = ['code', 'The book keeps ' + rows.most + ' lawns, and no more fit.']; }
      refuse(found);
      if (found) { return; }
      if (editing) { changed(row); } else { added(row); }
    }

    function added(row) {
      var id = rows.add(row);
      say(row.code + ' is kept.', function () { rows.remove(id); });
      finish();
      lawns.choose(id);
      shown(row.code);
    }

    /* The lawn that was just kept, with the way on from it; the words on what happened stand below it. */
    function shown(code) {
      parts.told.focus({ preventScroll: true });
      document.getElementById('lawn-' + code).scrollIntoView();
    }

    function changed(row) {
      var before = rows.get(editing.id), id = editing.id, was = before && before.code;
      if (before && before.programme) { row.programme = before.programme; }
      if (!before) { say('This lawn was taken off in another tab. What you typed is still here: keep it as a new lawn.'); editing = null; parts.save.textContent = 'Keep this lawn'; return; }
      rows.change(id, before, row);
      var back = was === row.code ? [] : renamed(was, row.code);
      say(row.code + ' is changed.' + (back.length ? ' Its jobs and entries go by the new code.' : ''), function () {
        rows.change(id, row, before);
        back.forEach(function (each) { each(); });
      });
      finish();
      lawns.choose(id);
      shown(row.code);
    }

    /* Jobs and entries name a lawn by its code. Returns what puts each back. */
    function renamed(from, to) {
      return [['jobs', 'name'], ['record', 'lawn']].reduce(function (back, each) {
        var kept = Swardbook.kept(each[0]);
        kept.all().filter(function (row) { return row.row[each[1]] === from; }).forEach(function (row) {
          var after = Object.assign({}, row.row);
          after[each[1]] = to;
          kept.change(row.id, row.row, after);
          back.push(function () { kept.change(row.id, after, row.row); });
        });
        return back;
      }, []);
    }

    function edit(lawn) {
      editing = lawn;
      fill(lawn);
      refuse(null);
      parts.title.textContent = 'Change ' + lawn.code;
      parts.save.textContent = 'Keep the change';
      parts.cancel.hidden = false;
      parts.more.open = facts.some(function (id) { return own(lawn.facts, id); });
      parts.title.focus();
    }

    function drop(lawn) {
      var removed = rows.remove(lawn.id);
      if (editing && editing.id === lawn.id) { finish(); }
      if (Swardbook.preferences.get('lawn-chosen') === lawn.id) { lawns.choose(''); }
      say(lawn.code + ' is taken off. Its jobs, entries and photographs stay.', removed && function () {
        rows.restore(removed);
        lawns.choose(lawn.id);
      });
      parts.undo.focus();
    }

    function button(parent, words, about, act) {
      var made = parent.appendChild(Swardbook.button(words, act));
      add(made, 'span', 'sb-hidden', ' ' + about);
      return made;
    }

    function showJobs(box, lawn) {
      var jobs = lawns.jobs(lawn), entries = Swardbook.kept('record').all().filter(function (each) { return each.row.lawn === lawn.code; });
      var line = add(box, 'ul', 'sb-lawns__jobs');
      jobs.forEach(function (each) {
        var link = add(add(line, 'li'), 'a', '', (plans[each.row.plan] || each.row.plan) + ', ' + Swardbook.dates.words(Swardbook.dates.fromIso(each.row.on)));
        link.href = root.dataset.jobs;
        link.addEventListener('click', function () { Swardbook.preferences.set('job', each.id); });
      });
      if (!jobs.length) { add(add(line, 'li'), 'a', '', 'Plan a job').href = root.dataset.jobs; }
      if (root.dataset.programme) { add(add(line, 'li'), 'a', '', lawn.programme ? 'A year of visits: kept' : 'A year of visits').href = root.dataset.programme; }
      if (root.dataset.inspection) { add(add(line, 'li'), 'a', '', 'Inspection').href = root.dataset.inspection; }
      if (root.dataset.record) { add(add(line, 'li'), 'a', '', 'Work record' + (entries.length ? ': ' + entries.length : '')).href = root.dataset.record; }
      /* What these links open goes by the lawn. */
      line.addEventListener('click', function () { lawns.choose(lawn.id); });
    }

    function factWords(id, value) { return input(id).tagName === 'SELECT' ? chosenWords(id, value) : Swardbook.calculator.pretty(value); }

    function item(lawn) {
      var made = Swardbook.element('li', 'sb-lawns__lawn'), isChosen = (lawns.chosen() || {}).id === lawn.id, area = lawns.area(lawn);
      made.id = 'lawn-' + lawn.code;
      made.toggleAttribute('data-chosen', isChosen);
      Swardbook.asWritten(add(made, 'h2', 'sb-lawns__code', lawn.code));
      add(made, 'p', 'sb-lawns__what', [
        chosenWords('grass', lawn.grass), chosenWords('place', lawn.place), lawn.site ? chosenWords('site', lawn.site) : '',
        area === null ? 'not measured' : Swardbook.calculator.pretty(Swardbook.calculator.show(area, Swardbook.readerUnits.of('m2', 'ft2'), 1)), lawn.town
      ].filter(Boolean).join(' · '));
      var known = facts.filter(function (id) { return own(lawn.facts, id); });
      if (known.length) {
        add(made, 'p', 'sb-note', known.map(function (id) { return Swardbook.capital(id.replace(/-/g, ' ')) + ': ' + Swardbook.small(factWords(id, lawn.facts[id])); }).join(' · '));
      }
      showJobs(made, lawn);
      var ways = add(made, 'p', 'sb-lawns__ways');
      button(ways, isChosen ? 'Chosen' : 'Choose', lawn.code, function () { lawns.choose(isChosen ? '' : lawn.id); }).setAttribute('aria-pressed', String(isChosen));
      button(ways, 'Change', lawn.code, function () { edit(lawn); });
      button(ways, 'Take off', lawn.code, function () { drop(lawn); });
      photographs.show(made, lawn);
      return made;
    }

    /* Jobs of before, whose code is no lawn yet: one tap makes it one. */
    function writeLoose() {
      var seen = {};
      parts.loose.textContent = '';
      Swardbook.kept('jobs').all().forEach(function (each) {
        var job = each.row, code = job.name || '';
        if (!isCode(code) || seen[code] || lawns.byCode(code)) { return; }
        seen[code] = true;
        var line = add(parts.loose, 'p', 'sb-lawns__ways', 'There is a job for ' + code + ', which is no lawn yet.');
        button(line, 'Keep it as a lawn', code, function () {
          added({ code: code, grass: job.grass, place: job.place, site: job.site, area: job.typed || +job.area.toPrecision(6) + ' m2', facts: {}, machines: [] });
        });
      });
    }

    function write() {
      var all = lawns.all();
      writeLoose();
      parts.none.hidden = all.length > 0;
      parts.list.hidden = !all.length;
      Swardbook.relist(parts.list, all, item);
    }

    parts.form.addEventListener('submit', function (event) { event.preventDefault(); save(); });
    parts.cancel.addEventListener('click', function () { finish(); say(''); });
    parts.undo.addEventListener('click', function () {
      var back = undo;
      say('Everything is as it was before.');
      back();
      parts.told.focus();
    });
    Swardbook.lawnFile(parts, say);
    Swardbook.keptNotice(root, 'lawns', Swardbook.lawnFile.made);
    ['jobs', 'record'].forEach(function (name) { Swardbook.kept(name).follow(write); });
    lawns.follow(write);
    document.addEventListener('swardbook:units', write);
    function strays() { photographs.strays(parts.strays, lawns.all()); }
    root.addEventListener('swardbook:photographs', strays);
    parts.body.hidden = false;
    write();
    strays();
    if (/^#lawn-/.test(window.location.hash)) {
      var there = document.getElementById(window.location.hash.slice(1));
      if (there) { there.scrollIntoView(); }
    }
  }

  Swardbook.component('lawn-record', start);
})();
