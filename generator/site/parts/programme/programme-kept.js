/* The year of a lawn as it is kept: what was agreed stays as it was on that day, and what happens to a visit stands beside it. A visit that
   is done makes its entries of the work record (parts/job-planner/job-tick.js). */
(function () {
  'use strict';
  var LONGEST = Swardbook.contract.kept.longest.entry, MOWING = 'mowing', RENOVATION = 'renovation';
  /* No spreader is set finer. */
  var WORKED_OUT = ['amount', 'rate'], DIGITS = 3;

  function iso(day) { return Swardbook.dates.iso(day); }
  function today() { return iso(Swardbook.dates.today()); }

  /* Amounts of one visit, as a line of the quote. */
  function line(name, price, times, inside) {
    return { name: name.slice(0, LONGEST), amount: (inside ? price.total : price.before_tax) * times, tax: price.tax * times };
  }

  function cutsWords(times) {
    return Swardbook.filled(Swardbook.contract.programme.sentences.cuts, { times: Swardbook.filled(Swardbook.contract.programme.sentences[times === 1 ? 'time' : 'times'], { count: times }) });
  }

  /* The row of a year that was planned. terms: {rate, inside, valid_days}; names: of tasks. */
  function made(out, asked, terms, names) {
    var row = { wanted: asked.wanted, start: asked.start, tasks: asked.tasks, cuts: out.cuts, visits: {} }, lines = {};
    out.visits.forEach(function (each, at) {
      var id = 'visit-' + (at + 1);
      row.visits[id] = { on: iso(each.day), tasks: each.tasks };
      if (each.price) { lines[id] = line(each.tasks.map(function (task) { return names[task]; }).join(', '), each.price, 1, terms.inside); }
    });
    if (out.renovation) { row.visits[RENOVATION] = { on: iso(out.renovation.day), plan: out.renovation.plan }; }
    if (!out.price) { return row; }
    if (out.price.cut) { lines[MOWING] = line(cutsWords(out.cuts), out.price.cut, out.cuts, terms.inside); }
    row.quote = {
      on: today(), currency: out.price.currency, rate: terms.rate, inside: terms.inside, lines: lines, before_tax: out.price.before_tax, tax: out.price.tax,
      total: out.price.total, area: out.area
    };
    if (terms.valid_days) { row.quote.until = iso(Swardbook.dates.today() + terms.valid_days); }
    return row;
  }

  function dayOf(visit) { return visit.done || visit.put || visit.on; }
  function stateOf(visit) { return visit.done ? 'done' : visit.skipped ? 'skipped' : ''; }

  /* [{id, visit, on}] by day. */
  function inOrder(programme) {
    return Object.keys(programme.visits || {}).map(function (id) { return { id: id, visit: programme.visits[id], on: dayOf(programme.visits[id]) }; })
      .sort(function (one, other) { return one.on < other.on ? -1 : one.on > other.on ? 1 : one.id < other.id ? -1 : 1; });
  }

  /* Puts a change into the lawn's row; returns what undoes it, or null where the lawn or its year is gone. */
  function change(lawn, act) {
    var rows = Swardbook.lawns.rows(), before = rows.get(lawn.id), after = Swardbook.shape.copy(before);
    if (!before) { return null; }
    act(after);
    if (!rows.change(lawn.id, before, after)) { return null; }
    return function () { rows.change(lawn.id, after, before); };
  }

  function changeVisit(lawn, id, act) {
    return change(lawn, function (row) { if (row.programme && row.programme.visits && row.programme.visits[id]) { act(row.programme.visits[id]); } });
  }

  /* What the work record is told of a task that is done: an entry by column; null where no record asks for it. */
  function entryOf(lawn, task, day) {
    var data = Swardbook.programmeOut.dataOf(lawn), area = Swardbook.lawns.area(lawn), done = {};
    if (!data || !Swardbook.own(data.grass.tasks, task) || area === null) { return null; }
    var found = Swardbook.programmeOut.stepOf(lawn, task, area), step = found.dated.step;
    done[step.id] = day;
    return Swardbook.jobTick.columns(
      { id: step.id, task: task, quantities: found.worked.map(Swardbook.jobWork.quantityValues) }, { quantities: step.quantities },
      { name: lawn.code, grass: lawn.grass, typed: lawn.area, area: area, done: done }
    );
  }

  /* Marks a visit done on a day. {back: undoes all of it, entries: how many were written, open: an entry that wants a product yet, or null}. */
  function markDone(lawn, id, day) {
    var visit = lawn.programme.visits[id], record = Swardbook.kept('record'), written = [], open = null;
    var back = changeVisit(lawn, id, function (each) { each.done = day; delete each.skipped; });
    if (!back) { return null; }
    (visit.tasks || []).forEach(function (task) {
      var entry = entryOf(lawn, task, day);
      if (!entry) { return; }
      Object.keys(entry).forEach(function (name) { if (!entry[name]) { delete entry[name]; } });
      WORKED_OUT.forEach(function (name) { if (entry[name]) { entry[name] = entry[name].replace(/^[\d.]+/, function (number) { return +(+number).toPrecision(DIGITS); }); } });
      if (entry.product && record.room()) { written.push(record.add(entry)); } else { open = open || entry; }
    });
    return { entries: written.length, open: open, back: function () { written.forEach(function (each) { record.remove(each); }); back(); } };
  }

  Swardbook.programmeKept = {
    made: made, inOrder: inOrder, dayOf: dayOf, stateOf: stateOf, change: change, changeVisit: changeVisit, markDone: markDone, cutsWords: cutsWords,
    RENOVATION: RENOVATION, MOWING: MOWING
  };
})();
