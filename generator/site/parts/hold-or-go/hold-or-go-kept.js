/* What was said of a day (assets/store/5-kept.js), one row for a date that every task and every step of a job shares; only the label's
   limits are a task's own, because another product has another label. */
(function () {
  'use strict';
  var GRASS = 'grass', own = Swardbook.own;

  function rows() { return Swardbook.kept('holds'); }

  /* Only answers to questions that this book has. */
  function texts(found, label) {
    var known = {}, questions = Swardbook.holdRules.questions;
    Object.keys(found || {}).forEach(function (id) {
      if (label ? own(questions, id) && questions[id].label : id === GRASS || own(questions, id) && !questions[id].label) { known[id] = found[id]; }
    });
    return known;
  }

  /* Days that are over are of no use to anybody; one with more in it than this book knows is not ours to drop. */
  function sweep() {
    var yesterday = Swardbook.dates.iso(Swardbook.dates.today() - 1);
    rows().all().forEach(function (day) {
      if (day.id < yesterday && rows().understood(day.id) && onlyKnown(day.row)) { rows().remove(day.id); }
    });
  }

  function onlyKnown(row) {
    return [[row.all, false]].concat(Object.keys(row.tasks || {}).map(function (task) { return [row.tasks[task], true]; })).every(function (each) {
      return Object.keys(texts(each[0], each[1])).length === Object.keys(each[0] || {}).length;
    });
  }

  function clock() {
    var now = new Date();
    return ('0' + now.getHours()).slice(-2) + ':' + ('0' + now.getMinutes()).slice(-2);
  }

  Swardbook.holdsKept = {
    grass: GRASS,
    /* {at, answers}: when it was last changed, and what was said of that date, by question; for a task, its label's limits too. */
    of: function (date, task) {
      var day = rows().get(date) || {};
      return { at: day.at || '', answers: Object.assign({}, texts(day.all, false), own(day.tasks, task) ? texts(day.tasks[task], true) : {}) };
    },
    /* text: '' takes the answer back. */
    say: function (date, task, id, text) {
      var before = rows().get(date), after = Swardbook.shape.copy(before || {}), mine = after.all = after.all || {};
      if (id !== GRASS && Swardbook.holdRules.questions[id].label) {
        after.tasks = after.tasks || {};
        mine = after.tasks[task] = own(after.tasks, task) ? after.tasks[task] : {};
      }
      if (text) { mine[id] = text.slice(0, Swardbook.contract.kept.longest.answer); } else { delete mine[id]; }
      after.at = clock();
      rows().together(function () {
        if (!before || !rows().change(date, before, after)) { rows().add(after, date); }
        sweep();
      });
    },
    forget: function (date) { rows().remove(date); },
    /* Whether it outlives the page: a browser may refuse storage to a page from a folder. */
    lasts: function () { return !rows().unkept(); },
    /* Calls `act` whenever something was said or forgotten, on this page or on another that is open. */
    follow: function (act) { return rows().follow(act); }
  };
})();
