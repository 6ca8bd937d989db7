/* Dates of a job's steps along what waits for what. Days are whole days since 1970. Twin: job dates. */
(function () {
  'use strict';
  var K = Swardbook.contract['job-planner'], has = Swardbook.own;

  function dayOfYear(day) { return Swardbook.dates.dayOfYear(Swardbook.dates.iso(day)); }

  /* The value of a day in runs of [value, days]. */
  function at(runs, number) {
    for (var i = 0, left = number; i < runs.length; i += 1) {
      if (left < runs[i][1]) { return runs[i][0]; }
      left -= runs[i][1];
    }
    return null;
  }

  function gap(step, earlier) {
    if (has(step.gaps, earlier.step.id)) { return step.gaps[earlier.step.id]; }
    if (earlier.settles !== null) { return earlier.settles; }
    return step.day > 0 ? step.day - earlier.step.day : 0;
  }

  /* The last day, planned or before, from which the step has settled by the time something waits for it. */
  function earlyEnough(step, steps, on, planned, takes) {
    var waiting = steps.filter(function (other) { return other.after.indexOf(step.id) >= 0 && !has(other.gaps, step.id); });
    if (!waiting.length) { return planned; }
    var needed = on + Math.min.apply(null, waiting.map(function (other) { return other.day; }));
    for (var back = 0; back < K.earliest_days_back; back += 1) {
      var found = planned - back;
      if (found + at(takes, dayOfYear(found)) <= needed) { return found; }
    }
    return planned;
  }

  /* steps: kept, by day. settling: figure -> days by day of the year. done: step id -> day set by hand. */
  function dated(steps, on, settling, done) {
    var known = {};
    steps.forEach(function (step) {
      var planned = on + step.day;
      var takes = step.settles && settling[step.settles];
      var set = has(done, step.id);
      var date = set ? done[step.id] : takes ? earlyEnough(step, steps, on, planned, takes) : planned;
      var mover = null;
      step.after.forEach(function (id) {
        if (set || !known[id]) { return; }
        var free = known[id].date + gap(step, known[id]);
        if (free > date) { date = free; mover = id; }
      });
      known[step.id] = {
        step: step, planned: planned, date: date, until: step.until_day === null ? null : date + step.until_day - step.day,
        settles: takes ? at(takes, dayOfYear(date)) : null, movedBy: mover
      };
    });
    var order = {};
    steps.forEach(function (step, position) { order[step.id] = position; });
    return steps.map(function (step) { return known[step.id]; }).sort(function (one, other) {
      return one.date - other.date || order[one.step.id] - order[other.step.id];
    });
  }

  /* Each step's day as written, 2026-10-12, as a number. */
  function numbered(dates) {
    var out = {};
    Object.keys(dates).forEach(function (id) { out[id] = Swardbook.dates.fromIso(dates[id]); });
    return out;
  }

  Swardbook.jobDates = { dated: dated, dayOfYear: dayOfYear, at: at, numbered: numbered };
})();
