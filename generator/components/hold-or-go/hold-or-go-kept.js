/* What was said of a day, kept on this device and nowhere else, one record for a date that every task and every step of a job
   shares; only the label's limits are a task's own, because another product has another label. Kept under 'holds' as
   {v: 1, days: {'2026-11-28': {at: '06:10', all: {question: text}, tasks: {task: {question: text}}}}}. */
(function () {
  'use strict';
  window.Swardbook = window.Swardbook || {};
  var KEPT = 'holds';
  var VERSION = 1;
  var LONGEST = 60;
  var MOST_DAYS = 20;
  var GRASS = 'grass';

  function own(object, name) { return Object.prototype.hasOwnProperty.call(object, name); }
  function isRecord(value) { return value !== null && typeof value === 'object' && !Array.isArray(value); }

  /* Only text, by questions that there are: what was kept may be of another version or of another hand. */
  function texts(found, label) {
    var kept = {}, questions = Swardbook.holdRules.questions;
    if (!isRecord(found)) { return kept; }
    Object.keys(found).forEach(function (id) {
      var known = label ? own(questions, id) && questions[id].label : id === GRASS || own(questions, id) && !questions[id].label;
      if (known && typeof found[id] === 'string') { kept[id] = found[id].slice(0, LONGEST); }
    });
    return kept;
  }

  function dayOf(found) {
    var day = { at: typeof found.at === 'string' && /^\d\d:\d\d$/.test(found.at) ? found.at : '', all: texts(found.all, false), tasks: {} };
    if (isRecord(found.tasks)) {
      Object.keys(found.tasks).forEach(function (task) { day.tasks[task] = texts(found.tasks[task], true); });
    }
    return day;
  }

  function days() {
    var kept, found = {};
    try {
      kept = JSON.parse(Swardbook.preferences.get(KEPT));
    } catch (error) {
      kept = null;
    }
    if (!isRecord(kept) || kept.v !== VERSION || !isRecord(kept.days)) { return found; }
    Object.keys(kept.days).forEach(function (date) {
      if (Swardbook.dates.fromIso(date) !== null && isRecord(kept.days[date])) { found[date] = dayOf(kept.days[date]); }
    });
    return found;
  }

  /* Days that are over are of no use to anybody. */
  function write(all) {
    var yesterday = Swardbook.dates.iso(Swardbook.dates.today() - 1), wanted = {};
    Object.keys(all).sort().filter(function (date) { return date >= yesterday; }).slice(0, MOST_DAYS).forEach(function (date) {
      wanted[date] = all[date];
    });
    Swardbook.preferences.set(KEPT, Object.keys(wanted).length ? JSON.stringify({ v: VERSION, days: wanted }) : '');
  }

  function clock() {
    var now = new Date();
    return ('0' + now.getHours()).slice(-2) + ':' + ('0' + now.getMinutes()).slice(-2);
  }

  Swardbook.holdsKept = {
    grass: GRASS,
    longest: LONGEST,
    /* {at, answers}: when it was last changed, and what was said of that date, by question; for a task, its label's limits too. */
    of: function (date, task) {
      var day = days()[date] || dayOf({});
      return { at: day.at, answers: Object.assign({}, day.all, own(day.tasks, task) ? day.tasks[task] : {}) };
    },
    /* text: '' takes the answer back. */
    say: function (date, task, id, text) {
      var all = days(), day = all[date] || dayOf({}), mine = day.all;
      if (id !== GRASS && Swardbook.holdRules.questions[id].label) {
        mine = own(day.tasks, task) ? day.tasks[task] : {};
        day.tasks[task] = mine;
      }
      if (text) { mine[id] = text.slice(0, LONGEST); } else { delete mine[id]; }
      day.at = clock();
      all[date] = day;
      write(all);
    },
    forget: function (date) {
      var all = days();
      delete all[date];
      write(all);
    },
    /* Whether it outlives the page: a browser may refuse storage to a page from a folder. */
    lasts: function () {
      try {
        return Boolean(window.localStorage.getItem('swardbook.' + KEPT));
      } catch (error) {
        return false;
      }
    },
    /* Calls `act` whenever something was said or forgotten, on this page or on another that is open. */
    follow: function (act) {
      function changed(event) { if (event.key === 'swardbook.' + KEPT || event.key === null) { act(); } }
      document.addEventListener('swardbook:' + KEPT, act);
      window.addEventListener('storage', changed);
      return function () {
        document.removeEventListener('swardbook:' + KEPT, act);
        window.removeEventListener('storage', changed);
      };
    }
  };
})();
