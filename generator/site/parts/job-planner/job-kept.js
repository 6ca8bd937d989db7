/* Jobs as they are shown, in a file and in a link. What comes from outside may be anything; only what reads as a job is taken. How a job
   is kept, and what is in one, stands in assets/store/5-kept.js. typed: the area as the reader wrote it; visit: answers of the
   inspection sheet, by question, which a file has under `inspection`; key: what its calendar's ids begin with. */
(function () {
  'use strict';
  var VERSION = 1, LONGEST_FILE = 2000000;
  var OLD_ADDED_STEP = /^visit-(?=.+-\d+$)/; /* What the ids of steps that an inspection adds began with. */
  var PART = 'part', AREA = /^\d{1,7}(\.\d{1,4})?$/;
  var NAMES = ['plan', 'grass', 'place', 'site', 'area', 'on'], IN_WORDS = { on: 'day', typed: 'area as typed', visit: 'inspection', crew: 'people', put: 'days put off to', without: 'steps left out', chosen: 'steps needed here' };

  var has = Swardbook.own;

  /* An area as it was typed, where it still says the same. */
  function asTyped(text, area) {
    try {
      return typeof text === 'string' && Math.abs(Swardbook.quantity.read(text, 'm2') - area) <= 1e-9 * area ? text : '';
    } catch (problem) {
      return Swardbook.sentenceOf(problem) && '';
    }
  }

  /* A row with everything that the page asks of a job. */
  function full(row, start) {
    var job = Object.assign({ name: '', start: start, key: '', visit: {}, done: {}, put: {}, without: [], chosen: [], rain: {} }, Swardbook.shape.copy(row));
    job.typed = asTyped(row.typed, row.area);
    return job;
  }

  /* What a step is called now, whose id was another when the job was kept. */
  function stepNow(id) {
    var book = Swardbook.jobs.book().steps_now;
    return has(book, id) ? book[id] : id.replace(OLD_ADDED_STEP, 'found-');
  }

  /* The job with the ids that its steps have today. What has both ids keeps what stands under today's. */
  function withStepsNow(job) {
    var out = Swardbook.shape.copy(job);
    ['done', 'put'].forEach(function (name) {
      Object.keys(job[name]).forEach(function (id) {
        var now = stepNow(id);
        if (now === id) { return; }
        delete out[name][id];
        if (!has(out[name], now)) { out[name][now] = job[name][id]; }
      });
    });
    ['without', 'chosen'].forEach(function (name) {
      out[name] = job[name].map(stepNow).filter(function (id, at, all) { return all.indexOf(id) === at; });
    });
    return out;
  }

  function inWords(fields) { return fields.map(function (name) { return IN_WORDS[name] || name; }).join(', '); }

  /* {rows, faults} of a file's text: jobs that could be read, and a sentence for each that could not, or not all of it. */
  function read(text) {
    var found = null, rows = [], faults = [];
    try { found = text.length <= LONGEST_FILE ? JSON.parse(text) : null; } catch (error) { found = null; }
    if (!Swardbook.shape.isRecord(found) || found.v !== VERSION || !Array.isArray(found.jobs)) { return { rows: [], faults: [] }; }
    found.jobs.forEach(function (given, number) {
      var each = Swardbook.shape.renamed(given, 'inspection', 'visit');
      var clean = Swardbook.kept.sound('jobs', each), amiss = inWords(Swardbook.kept.amiss('jobs', each));
      if (clean) { rows.push(clean.row); }
      if (!clean) { faults.push('Job ' + (number + 1) + ' in it is left out, because this is wrong or missing: ' + amiss + '.'); }
      else if (!clean.whole) { faults.push('Job ' + (number + 1) + ' in it is taken without what could not be read: ' + (amiss || 'a part unknown here') + '.'); }
    });
    return { rows: rows, faults: faults };
  }

  function write(jobs) { return JSON.stringify({ v: VERSION, jobs: jobs.map(function (job) { return Swardbook.shape.renamed(job, 'visit', 'inspection'); }) }); }

  /* {} for no job, null for a damaged link, else what it names. */
  function particulars(fragment) {
    if (fragment.indexOf('=') < 0) { return {}; }
    var found = Swardbook.fragment.read(fragment, function (name, value) {
      if (name === 'on') { return Swardbook.kept.isDay(value) ? value : null; }
      if (name === PART) { return Swardbook.kept.isId(value) ? value : null; } /* Of the page, not of the job (parts/job-parts). */
      if (name === 'area') { return AREA.test(value) && Swardbook.kept.isArea(+value) ? value : null; }
      return NAMES.indexOf(name) >= 0 && Swardbook.kept.isId(value) ? value : null;
    });
    if (!found) { return null; }
    delete found.v;
    delete found[PART];
    if (found.area) { found.area = +found.area; }
    return found;
  }

  /* part: of the page, where the link is to lead to one; a link to hand on has none, for books of before know none. */
  function fragment(job, part) {
    var text = '#' + Swardbook.fragment.begin + NAMES.map(function (name) { return '&' + name + '=' + (name === 'area' ? +job.area.toFixed(4) : job[name]); }).join('');
    var ending = part ? '&' + PART + '=' + part : '';
    return text.length + ending.length <= Swardbook.fragment.longest ? text + ending : text;
  }

  /* The job with ids that this book has, and a sentence for each that it has not. */
  function known(job, usual) {
    var book = Swardbook.jobs.book(), told = [];
    var out = Object.assign({}, job);
    if (!has(book.grasses, out.grass)) { told.push('This book has no grass “' + out.grass + '”.'); out.grass = has(book.plans, out.plan) ? '' : usual.grass; }
    if (!has(book.plans, out.plan)) { told.push('This book has no plan “' + out.plan + '”.'); out.plan = ''; }
    if (!out.grass) {
      var able = Object.keys(book.grasses).filter(function (id) { return book.grasses[id].plans.indexOf(out.plan) >= 0; });
      out.grass = able.indexOf(usual.grass) >= 0 || !able.length ? usual.grass : able[0];
    }
    if (book.grasses[out.grass].plans.indexOf(out.plan) < 0) {
      if (out.plan) { told.push(book.grasses[out.grass].name + ' does not take “' + book.plans[out.plan].name + '”; its own plan is shown.'); }
      out.plan = book.grasses[out.grass].plans[0];
    }
    if (!has(book.places, out.place)) { told.push('This book has no place “' + out.place + '”.'); out.place = usual.place; }
    if (book.places[out.place].sites.indexOf(out.site) < 0) {
      if (!has(book.sites, out.site)) { told.push('This book has no site “' + out.site + '”.'); }
      out.site = book.places[out.place].sites[0];
    }
    return { job: out, told: told };
  }

  Swardbook.jobsKept = { full: full, withStepsNow: withStepsNow, read: read, write: write, particulars: particulars, fragment: fragment, known: known };
})();
