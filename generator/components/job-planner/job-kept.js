/* Jobs as text: kept on this device, in a file, in a link. What comes from outside may be anything; only what reads as a job is taken.
   A job: {plan, grass, place, site, area [m2], typed, on, name, start, done, put, without, rain [mm by day], visit, key}; dates are ISO.
   typed: the area as the reader wrote it; visit: answers of the visit sheet, by question; key: what its calendar's ids begin with. */
(function () {
  'use strict';
  var KEPT = 'jobs', VERSION = 1, MOST = 200, LONGEST_FRAGMENT = 300, LONGEST_FILE = 2000000;
  var ID = /^[a-z0-9][a-z0-9-]{0,59}$/, CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/, AREA = /^\d{1,7}(\.\d{1,4})?$/, KEY = /^[\w.!~*'()%-]{1,300}$/;
  var LARGEST_M2 = 1e7;
  var NAMES = ['plan', 'grass', 'place', 'site', 'area', 'on'];

  function has(object, name) { return Object.prototype.hasOwnProperty.call(object, name); }
  function isDay(text) { return typeof text === 'string' && Swardbook.dates.fromIso(text) !== null; }
  function isArea(value) { return typeof value === 'number' && value > 0 && value <= LARGEST_M2; }

  /* An area as it was typed, where it still says the same. */
  function asTyped(text, area) {
    try {
      return typeof text === 'string' && Math.abs(Swardbook.quantity.read(text, 'm2') - area) <= 1e-9 * area ? text : '';
    } catch (problem) {
      if (!problem.sentence) { throw problem; }
      return '';
    }
  }

  function days(found) {
    var kept = {};
    Object.keys(found && typeof found === 'object' ? found : {}).slice(0, MOST).forEach(function (id) {
      if (ID.test(id) && isDay(found[id])) { kept[id] = found[id]; }
    });
    return kept;
  }

  /* A clean copy, or null. */
  function sound(found, start) {
    if (!found || typeof found !== 'object' || !isDay(found.on) || !isArea(found.area)) { return null; }
    if (!['plan', 'grass', 'place', 'site'].every(function (name) { return typeof found[name] === 'string' && ID.test(found[name]); })) { return null; }
    var rain = {};
    Object.keys(found.rain && typeof found.rain === 'object' ? found.rain : {}).slice(0, MOST).forEach(function (day) {
      if (isDay(day) && typeof found.rain[day] === 'number' && found.rain[day] >= 0 && found.rain[day] < 2000) { rain[day] = found.rain[day]; }
    });
    return {
      plan: found.plan, grass: found.grass, place: found.place, site: found.site, area: found.area, on: found.on,
      name: typeof found.name === 'string' ? found.name.slice(0, 40) : '', start: CLOCK.test(found.start) ? found.start : start,
      typed: asTyped(found.typed, found.area), key: typeof found.key === 'string' && KEY.test(found.key) ? found.key : '',
      visit: Swardbook.jobVisit.clean(found.visit), done: days(found.done), put: days(found.put), rain: rain,
      without: Array.isArray(found.without) ? found.without.filter(function (id) { return typeof id === 'string' && ID.test(id); }).slice(0, MOST) : []
    };
  }

  /* {jobs, chosen, damaged} of a text that was kept or exported. */
  function read(text, start) {
    try {
      if (text.length > LONGEST_FILE) { throw new Error('too long'); }
      var found = JSON.parse(text);
      if (!found || found.v !== VERSION || !Array.isArray(found.jobs)) { throw new Error('no jobs'); }
      var jobs = found.jobs.slice(0, MOST).map(function (each) { return sound(each, start); });
      var whole = jobs.filter(Boolean);
      return { jobs: whole, chosen: found.chosen >= 0 && whole[found.chosen] ? Math.floor(found.chosen) : 0, damaged: whole.length < found.jobs.length };
    } catch (error) {
      return { jobs: [], chosen: 0, damaged: true };
    }
  }

  function write(jobs, chosen) { return JSON.stringify({ v: VERSION, chosen: chosen, jobs: jobs }); }

  function load(start) {
    var text = Swardbook.preferences.get(KEPT);
    return text === null ? { jobs: [], chosen: 0, damaged: false } : read(text, start);
  }

  function keep(jobs, chosen) { Swardbook.preferences.set(KEPT, write(jobs.slice(0, MOST), chosen)); }

  /* {} for no job, null for a damaged link, else what it names. */
  function particulars(fragment) {
    var text = fragment.replace(/^#/, '');
    if (text.indexOf('=') < 0) { return {}; }
    if (text.length > LONGEST_FRAGMENT) { return null; }
    var found = {};
    var whole = text.split('&').every(function (pair) {
      var cut = pair.indexOf('='), name = pair.slice(0, cut), value = pair.slice(cut + 1);
      if (has(found, name) || (name !== 'v' && NAMES.indexOf(name) < 0)) { return false; }
      found[name] = value;
      if (name === 'v') { return value === '1'; }
      if (name === 'on') { return isDay(value); }
      return name === 'area' ? AREA.test(value) && isArea(+value) : ID.test(value);
    });
    if (!whole || found.v !== '1') { return null; }
    delete found.v;
    if (found.area) { found.area = +found.area; }
    return found;
  }

  function fragment(job) {
    return '#v=1' + NAMES.map(function (name) { return '&' + name + '=' + (name === 'area' ? +job.area.toFixed(4) : job[name]); }).join('');
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

  Swardbook.jobsKept = { sound: sound, read: read, write: write, load: load, keep: keep, particulars: particulars, fragment: fragment, known: known, isArea: isArea };
})();
