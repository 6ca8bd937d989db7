/* What a job is worked out from, loaded as scripts when it is asked for: a page opened from a folder has no other way.
   Each script calls plan, place, practice, book, inspection, moving or money; see generator/site/pages/job/job_scripts.py, moving_script.py and
   money_script.py. */
(function () {
  'use strict';
  var held = { plan: {}, place: {}, practice: null, book: null, inspection: null, moving: null, money: null };

  function key(first, second) { return first + '--' + second; }

  Swardbook.jobs = {
    plan: function (plan, grass, value) { held.plan[key(plan, grass)] = value; },
    place: function (grass, place, value) { held.place[key(grass, place)] = value; },
    practice: function (value) { held.practice = value; },
    /* {grasses, plans, places, sites, cautions, calculators, sums, tax, domain}: names, and what goes with what. */
    book: function (value) { if (value) { held.book = value; } return held.book; },
    /* {tasks, asks, outcomes}: names, questions, and what each outcome of the inspection says and adds. */
    inspection: function (value) { if (value) { held.inspection = value; } return held.inspection; },
    /* {lasts, experts, messages, signature, address}: what is asked for when a job is moved. */
    moving: function (value) { if (value) { held.moving = value; } return held.moving; },
    /* {pieces, unforeseen, practice, reach, invented, tax, valid_days, hourly_price, invoice}: the practice's terms, asked for on the part Price. */
    money: function (value) { if (value) { held.money = value; } return held.money; },
    held: function (plan, grass, place, site) {
      var sites = held.place[key(grass, place)];
      return { plan: held.plan[key(plan, grass)], site: sites && sites[site], practice: held.practice };
    }
  };
})();

/* A kept job worked out, wherever it is asked for: the planner's own page, and the day of all lawns (parts/today). */
(function () {
  'use strict';

  /* Whether the job takes up an inspection, and the book has one to ask. */
  function inspected(job, targets) { return targets.inspection.length > 0 && Object.keys(job.visit).length > 0; }

  /* Addresses of what is still to be loaded for a job. targets: {jobs, calculators: folders, inspection: scripts in order}. */
  function needed(job, targets) {
    var held = Swardbook.jobs.held(job.plan, job.grass, job.place, job.site), wanted = [], book = Swardbook.jobs.book();
    if (!held.practice) { wanted.push(targets.jobs + 'practice.js'); }
    if (!held.plan) { wanted.push(targets.jobs + job.plan + '--' + job.grass + '.js'); }
    if (!held.site) { wanted.push(targets.jobs + 'places/' + job.place + '--' + job.grass + '.js'); }
    var ids = book.sums.concat(held.plan ? [].concat.apply([], held.plan.steps.map(function (step) { return (step.quantities || []).map(function (each) { return each.calculator; }); })) : []);
    ids.forEach(function (id) { if (!Swardbook.calculators || !Swardbook.calculators[id]) { wanted.push(targets.calculators + id + '.js'); } });
    if (inspected(job, targets)) {
      var there = [Swardbook.inspectionSheet, Swardbook.inspection, Swardbook.jobs.inspection()];
      targets.inspection.forEach(function (address, number) { if (!there[number]) { wanted.push(address); } });
    }
    return wanted;
  }

  /* Everything that a job needs, loaded: a promise that fails where something does not come. */
  function ready(job, targets) {
    var wanted = needed(job, targets);
    return wanted.length ? Promise.all(wanted.map(Swardbook.load)).then(function () { return ready(job, targets); }) : Promise.resolve();
  }

  /* {out, plan, seen, measured} of a job whose data are there. */
  function worked(job, targets) {
    var data = Swardbook.jobs.held(job.plan, job.grass, job.place, job.site), rain = {}, without = {};
    Object.keys(job.rain).forEach(function (day) { rain[Swardbook.dates.fromIso(day)] = job.rain[day]; });
    var seen = inspected(job, targets) ? Swardbook.jobInspection.read(job.visit) : null;
    job.without.forEach(function (id) { without[id] = Swardbook.jobs.book().not_needed; });
    var adjusted = Object.assign({}, seen ? seen.adjusted : {}, { without: without, chosen: job.chosen.concat(seen ? seen.adjusted.chosen : []) });
    var out = Swardbook.jobWork.workOut(data, {
      area: job.area, people: job.crew, on: Swardbook.dates.fromIso(job.on), done: Swardbook.jobDates.numbered(Object.assign({}, job.put, job.done)), adjusted: adjusted, rain: rain
    });
    return { out: out, plan: Swardbook.jobPlan.stepsFor(data.plan, adjusted), seen: seen && seen.values, measured: adjusted.measured };
  }

  Swardbook.jobOut = { inspected: inspected, needed: needed, ready: ready, worked: worked };
})();
