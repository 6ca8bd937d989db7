/* The weeks of so many visits that serve a year's works best, and the day of a visit: how, is told in generator/jobs/visit_grouping.py.
   Twin: visit grouping. Twin: visit day. */
(function () {
  'use strict';
  var YEAR = Swardbook.contract.year, LEFT = 100000, SATURDAY = 5;

  function ring(value, year) { return ((value % year) + year) % year; }

  /* By how many weeks a work is moved to a visit's week, below 0 for earlier; null where it may not go there. */
  function moved(work, visit, year) {
    var later = ring(visit - work.week, year), earlier = ring(work.week - visit, year), after = later <= work.later, before = earlier <= work.earlier;
    if (after && (!before || later <= earlier)) { return later; }
    return before ? 0 - earlier : null;
  }

  /* [week of the visit, weeks moved], or null for a work that is left; the earlier of two as near. */
  function nearest(work, visits, year) {
    return visits.reduce(function (best, visit) {
      var by = moved(work, visit, year);
      if (by === null) { return best; }
      return !best || Math.abs(by) < Math.abs(best[1]) || Math.abs(by) === Math.abs(best[1]) && by < best[1] ? [visit, by] : best;
    }, null);
  }

  /* since, until: weeks from the visit before it, and to the visit after it. */
  function cost(work, since, until) { return Math.min(since <= work.earlier ? since : LEFT, until <= work.later ? until : LEFT); }

  function costs(works, weeks, year) {
    return weeks.map(function (from) {
      var after = works.map(function (work) { return [ring(work.week - from - 1, year) + 1, work]; });
      return weeks.map(function (other) {
        var span = ring(other - from - 1, year) + 1;
        return after.reduce(function (sum, each) { return each[0] <= span ? sum + cost(each[1], each[0], span - each[0]) : sum; }, 0);
      });
    });
  }

  /* For 1 to `most` visits, the first of them at `first` and no other before it: [[least cost, positions]]. */
  function from(first, table, most) {
    var sums = {}, ways = {}, found = [];
    sums[first] = 0;
    ways[first] = [first];
    function least(act, limit) {
      return Object.keys(sums).map(Number).filter(function (at) { return at < limit; }).reduce(function (best, at) {
        var sum = sums[at] + act(at);
        return !best || sum < best[1] ? [at, sum] : best;
      }, null);
    }
    for (var number = 0; number < most; number += 1) {
      var last = least(function (at) { return table[at][first]; }, Infinity), longer = {}, longerWays = {};
      found.push([last[1], ways[last[0]]]);
      for (var then = first + 1; then < table.length; then += 1) {
        var before = least(function (at) { return table[at][then]; }, then);
        if (before) { longer[then] = before[1]; longerWays[then] = ways[before[0]].concat(then); }
      }
      if (!Object.keys(longer).length) { break; }
      sums = longer;
      ways = longerWays;
    }
    return found;
  }

  /* The weeks of at most so many visits; fewer where more would serve no better. works: [{week, earlier, later}]. */
  function bestVisits(works, most, year) {
    var ringYear = year || YEAR.weeks, weeks = [], best = [];
    if (!works.length || most < 1) { return []; }
    works.forEach(function (work) {
      [work.week - work.earlier, work.week, work.week + work.later].forEach(function (week) {
        var at = ring(week, ringYear);
        if (weeks.indexOf(at) < 0) { weeks.push(at); }
      });
    });
    weeks.sort(function (one, other) { return one - other; });
    var table = costs(works, weeks, ringYear);
    weeks.forEach(function (week, first) {
      from(first, table, Math.min(most, weeks.length - first)).forEach(function (found, number) {
        if (!best[number] || found[0] < best[number][0]) { best[number] = found; }
      });
    });
    return best.reduce(function (kept, each) { return each[0] < kept[0] ? each : kept; })[1].map(function (at) { return weeks[at]; });
  }

  /* {visits: [{week, placed: [{work, moved}], tasks}], own: [work]} of these works. */
  function grouped(works, most) {
    var weeks = bestVisits(works, most), visits = {}, own = [];
    works.forEach(function (work) {
      var found = nearest(work, weeks, YEAR.weeks);
      if (!found) { own.push(work); return; }
      visits[found[0]] = visits[found[0]] || { week: found[0], placed: [], tasks: [] };
      visits[found[0]].placed.push({ work: work, moved: found[1] });
      if (visits[found[0]].tasks.indexOf(work.task) < 0) { visits[found[0]].tasks.push(work.task); }
    });
    return { visits: Object.keys(visits).map(function (week) { return visits[week]; }), own: own };
  }

  function dayOf(year, number) {
    var at = ring(number, YEAR.days), month = YEAR.starts.filter(function (start) { return start <= at; }).length - 1;
    return Swardbook.dates.fromIso(String(year).padStart(4, '0') + '-' + String(month + 1).padStart(2, '0') + '-' + String(at - YEAR.starts[month] + 1).padStart(2, '0'));
  }

  /* The day of a day number (0 for 1 January) in the year from `start` on; both in days since 1970. */
  function comingDay(number, start) {
    var year = +Swardbook.dates.iso(start).slice(0, 4), day = dayOf(year, number);
    return day >= start ? day : dayOf(year + 1, number);
  }

  /* The day of a week (0 for the first) in the year that begins with `start`; a weekend's falls on the Monday after it. */
  function visitDay(week, start) {
    var year = +Swardbook.dates.iso(start).slice(0, 4), last = week === YEAR.weeks - 1 ? YEAR.days - 1 : week * 7 + 6;
    var day = Math.max(dayOf(dayOf(year, last) >= start ? year : year + 1, week * 7), start), weekday = ring(day + 3, 7);
    return weekday >= SATURDAY ? day + 7 - weekday : day;
  }

  Swardbook.visitGroups = { bestVisits: bestVisits, nearest: nearest, grouped: grouped, visitDay: visitDay, comingDay: comingDay };
})();
