/* lawns.json: every lawn with its inspection, the jobs and the work record, in one file that the command line reads too. What may stand
   in it says book/schema/lawns.schema.json. Anything may come in; only what reads as a lawn, a job or an entry is taken.
   Twin: lawn file. */
(function () {
  'use strict';
  var VERSION = 1, LARGEST_FILE = 8000000, MOST_TOLD = 20, S = Swardbook.shape, LISTS = ['lawns', 'jobs', 'record', 'inspections'];

  function text() {
    var codes = {}, file = { version: VERSION, lawns: [], jobs: [], record: [], inspections: [] };
    Swardbook.lawns.rows().all().forEach(function (each) {
      codes[each.id] = each.row.code;
      file.lawns.push(each.row);
    });
    file.jobs = Swardbook.kept('jobs').all().map(function (each) { return S.renamed(each.row, 'visit', 'inspection'); });
    file.record = Swardbook.kept('record').all().map(function (each) { return each.row; });
    Swardbook.kept('inspections').all().forEach(function (each) { if (codes[each.id]) { file.inspections.push(Object.assign({ lawn: codes[each.id] }, each.row)); } });
    return JSON.stringify(file, null, 1) + '\n';
  }

  function made() { return { name: 'lawns.json', kind: 'application/json', text: text() }; }

  /* {lawns, jobs, record, inspections, faults}, or a sentence where it is no such file. */
  function read(words) {
    var found = null, out = { lawns: [], jobs: [], record: [], inspections: [], faults: [] };
    try { found = words.length <= LARGEST_FILE ? JSON.parse(words) : null; } catch (error) { found = null; }
    if (!S.isRecord(found) || !LISTS.some(function (name) { return Array.isArray(found[name]); })) { return 'That is not a file of lawns.'; }
    if (found.version !== VERSION) { return 'That file is of a version that this book does not know. Open it in the book that it was made with.'; }
    LISTS.forEach(function (name) {
      (Array.isArray(found[name]) ? found[name] : []).forEach(function (given, number) {
        var row = name === 'jobs' ? S.renamed(given, 'inspection', 'visit') : given, clean = Swardbook.kept.sound(name, row);
        var lost = clean && name === 'inspections' && typeof row.lawn !== 'string', amiss = clean && clean.whole ? '' : Swardbook.kept.amiss(name, row).join(', ');
        if (clean && !lost) { out[name].push(clean.row); }
        if (!clean || lost || !clean.whole) {
          out.faults.push('In ' + name + ', number ' + (number + 1) + ' is ' + (clean && !lost ? 'taken without what could not be read' : 'left out') + (amiss ? ': ' + amiss : '') + '.');
        }
      });
    });
    return out;
  }

  /* Puts in what is not here yet; a lawn of a code that is here takes what the file says. Returns [words, what undoes it]. */
  function take(found) {
    var back = [], news = { lawns: 0, changed: 0, jobs: 0, record: 0 }, over = 0;
    function put(name, row, id) {
      var rows = Swardbook.kept(name), made = rows.room() ? rows.add(row, id) : null;
      if (made === null) { over += 1; return false; }
      back.push(function () { rows.remove(made); });
      return true;
    }
    function change(name, id, before, after) {
      var rows = Swardbook.kept(name);
      if (S.same(before, after)) { return false; }
      rows.change(id, before, after);
      back.push(function () { rows.change(id, after, before); });
      return true;
    }
    found.lawns.forEach(function (row) {
      var there = Swardbook.lawns.byCode(row.code), before = there && Swardbook.kept('lawns').get(there.id);
      if (!there) { news.lawns += put('lawns', row) ? 1 : 0; }
      else if (change('lawns', there.id, before, Object.assign({}, before, row))) { news.changed += 1; }
    });
    ['jobs', 'record'].forEach(function (name) {
      var have = new Set(Swardbook.kept(name).all().map(function (each) { return JSON.stringify(each.row); }));
      found[name].forEach(function (row) {
        var key = JSON.stringify(row);
        if (!have.has(key)) { news[name] += put(name, row) ? 1 : 0; }
        have.add(key);
      });
    });
    found.inspections.forEach(function (given) {
      var lawn = Swardbook.lawns.byCode(given.lawn), row = Object.assign({}, given), before = lawn && Swardbook.kept('inspections').get(lawn.id);
      delete row.lawn;
      if (lawn && before) { change('inspections', lawn.id, before, Object.assign({}, before, row)); }
      else if (lawn) { put('inspections', row, lawn.id); }
    });
    var words = [[news.lawns, 'new lawn'], [news.changed, 'lawn changed', 'lawns changed'], [news.jobs, 'new job'], [news.record, 'new entry', 'new entries']].filter(function (each) { return each[0]; })
      .map(function (each) { return each[0] + ' ' + (each[0] === 1 ? each[1] : each[2] || each[1] + 's'); });
    var said = words.length ? 'Taken in: ' + words.join(', ') + '.' : 'Everything in that file is here already.';
    return [said + (over ? ' ' + over + ' did not fit.' : ''), back.length ? function () { back.reverse().forEach(function (each) { each(); }); } : null];
  }

  function tellFaults(list, faults) {
    var few = faults.slice(0, MOST_TOLD).concat(faults.length > MOST_TOLD ? ['And ' + (faults.length - MOST_TOLD) + ' more.'] : []);
    list.textContent = '';
    few.forEach(function (each) { Swardbook.add(list, 'li', '', each); });
    list.hidden = !few.length;
  }

  /* parts: of the page; say(words, back): tells what was done, and how to undo it. */
  Swardbook.lawnFile = function (parts, say) {
    parts.export.addEventListener('click', function () {
      var file = made();
      Swardbook.download(file.name, file.kind, file.text);
    });
    parts.file.addEventListener('change', function () {
      var file = parts.file.files[0];
      if (!file) { return; }
      file.text().then(function (words) {
        var found = read(words), done = typeof found === 'string' ? [found, null] : take(found);
        tellFaults(parts.faults, found.faults || []);
        say(done[0], done[1]);
        parts.told.focus();
      }, function () { say('That file could not be read.'); });
      parts.file.value = '';
    });
  };
  Swardbook.lawnFile.made = made;
  Swardbook.lawnFile.read = read;
  Swardbook.lawnFile.take = take;
})();
