/* Dates of a job's steps along what waits for what, and the next good day for a job. Days are whole days since 1970. Twins: job dates, next day. */
(function () {
  'use strict';
  var K = Swardbook.contract['job-planner'], DAYS = Swardbook.contract.year.days, has = Swardbook.own;

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

  /* The window that a day is in, of a plan at a place; nothing for none. */
  function windowAt(stretches, day) {
    var number = dayOfYear(day);
    return stretches.find(function (each) { return around(number - each.first) <= around(each.last - each.first); });
  }

  function around(value) { return (value % DAYS + DAYS) % DAYS; }

  /* The next such day of the year; a 29 February on the way makes it a day later. */
  function onOrAfter(day, number) {
    var later = day + around(number - dayOfYear(day));
    return dayOfYear(later) === number ? later : later + 1;
  }

  /* The day that a job is best planned for, from the first day that leaves time to prepare. */
  function next(stretches, ready) {
    var day = dayOfYear(ready), here = windowAt(stretches, ready);
    function best(each) { return each.best ? Swardbook.dates.dayOfYear('2001-' + each.best) : null; }
    if (here) { return best(here) !== null && around(best(here) - day) <= around(here.last - day) ? onOrAfter(ready, best(here)) : ready; }
    if (!stretches.length) { return ready; }
    var opens = stretches.reduce(function (one, other) { return around(other.first - day) < around(one.first - day) ? other : one; });
    return onOrAfter(ready, best(opens) === null ? opens.first : best(opens));
  }

  Swardbook.jobDates = { windowAt: windowAt, next: next, dated: dated, dayOfYear: dayOfYear, at: at, numbered: numbered };
})();
