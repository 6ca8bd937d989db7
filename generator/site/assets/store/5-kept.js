/* What this book keeps of a reader's work, on this device and nowhere else: Swardbook.kept('jobs') is a collection (4-collection.js).

     jobs     a row a job: {plan, grass, place, site, area [m2], typed, on, name, start, crew, done, put, without, chosen, rain [mm by day], visit, key, money}
              money: {quotes: {id: {number, on, until, currency, rate [share], inside, lines: {number: {name, amount, tax}}, before_tax, tax, total,
              deposit, minutes, packs: {number: {name, count}}, job, area [m2], accepted}}, done, invoice: {number, on, due}, used: {minutes, packs},
              payments: {id: {number, on, amount, deposit}}, variations: {id: {number, on, what, why, amount, tax, agreed}}}; all amounts in whole cents
     record   a row an entry: {column: text}
     lawns    a row a lawn: {code, grass, place, site, area, town, travel, machines, facts: {question: text}, pieces: [piece], programme}; measures as
              typed, with their units. Jobs and entries of the record name a lawn by its code
              programme: {wanted, start, tasks, cuts, visits: {id: {on, tasks, plan, put, done, skipped}}, quote: {on, until, currency, rate [share],
              inside, lines: {id of a visit, or mowing: {name, amount, tax}}, before_tax, tax, total, area [m2], accepted}}; amounts in whole cents
              seen: {soil, soil_depth: as typed, soil_on, green_up, last_frost}: what was seen on it, and on which days
     seen     a row a place, by its id: the same, where no lawn is chosen
     lawn     a row a piece of the lawn that is being measured: {name, sizes, area [m2], hole}
     inspection  one row, 'sheet': {head, answers, ticks}, each text by id; kept under 'visit'
     inspections the same, a row a lawn, by the lawn's id
     holds    a row a day, by its date: {at, all: {question: text}, tasks: {task: {question: text}}}

   What was called a visit is an inspection now. On the device it keeps its name, here and in a job, so that a book of an earlier edition
   on the same host goes on with the same sheet; `under` says so. A file has the new word (parts/job-planner/job-kept.js).

   Ids of grasses, plans, places, questions and columns may be another book's: they are kept as they are, and shown for what they are.
   Editions before kept each as one text, {v: 1, ...}, under 'swardbook.' and the same name; `old` tells its rows apart. */
(function () {
  'use strict';
  var VERSION = 1, SMALLEST_LAWN_M2 = 1e-4, SMALLEST_PIECE_M2 = 1e-6, LARGEST_PIECE_M2 = 1e9, K = Swardbook.contract.kept, L = K.longest;
  var NAME = /^[a-z][a-z0-9_-]{0,59}$/, CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/, LAWN = new RegExp('^' + K.lawn + '$');
  var EVENT_KEY = /^[\w.!~*'()%-]{1,700}$/;
  var S = Swardbook.shape, opened = {};

  function text(longest) { return function (value) { return typeof value === 'string' && value.length <= longest; }; }
  function like(pattern) { return function (value) { return typeof value === 'string' && pattern.test(value); }; }
  function or(empty, test) { return function (value) { return value === empty || test(value); }; }
  function number(test) { return function (value) { return typeof value === 'number' && test(value); }; }

  function isDate(value) { return typeof value === 'string' && Swardbook.dates.fromIso(value) !== null; }
  /* A day that there is a calendar for, a year's work before and after it. */
  function isDay(value) { return isDate(value) && +value.slice(0, 4) >= K.first_year && +value.slice(0, 4) <= K.last_year; }

  var isId = like(Swardbook.rows.ID), isArea = number(function (value) { return value >= SMALLEST_LAWN_M2 && value <= K.largest_lawn_m2; });
  var days = { each: isDay, named: isId }, answers = { each: text(L.answer), named: like(NAME) };

  var isCrew = number(function (people) { return people >= 1 && people <= K.most_people && people === Math.floor(people); });

  var sheet = { fields: { head: answers, answers: answers, ticks: answers } };
  var piece = { needed: ['name', 'sizes', 'area', 'hole'], fields: {
    name: function (value) { return text(L.piece)(value) && value !== ''; }, sizes: text(L.sizes),
    area: number(function (m2) { return m2 >= SMALLEST_PIECE_M2 && m2 <= LARGEST_PIECE_M2; }), hole: function (value) { return typeof value === 'boolean'; }
  } };

  /* The money of a job (parts/job-money). Rows of a list are kept by a name each, so that two tabs may add to it at once. */
  var cents = number(function (value) { return Math.floor(value) === value && Math.abs(value) <= K.most_cents; }), flag = function (value) { return typeof value === 'boolean'; };
  var count = number(function (value) { return value >= 0 && value <= K.most_cents; });
  function of(fields, optional) { return { needed: Object.keys(fields), fields: Object.assign({}, fields, optional) }; }
  function many(shape) { return { each: shape, named: isId }; }
  var money = { fields: {
    quotes: many(of({
      number: count, on: isDay, currency: like(/^[A-Z]{3}$/), rate: number(function (share) { return share >= 0 && share <= 1; }), inside: flag,
      lines: many(of({ name: text(L.entry), amount: cents, tax: cents })), before_tax: cents, tax: cents, total: cents, deposit: cents
    }, { until: isDay, minutes: count, packs: many(of({ name: text(L.entry), count: count })), job: text(L.quoted), area: isArea, accepted: isDay })),
    done: isDay, invoice: of({ number: text(L.job), on: isDay }, { due: isDay }), used: { fields: { minutes: count, packs: many(count) } },
    payments: many(of({ number: count, on: isDay, amount: cents }, { deposit: flag })),
    variations: many(of({ number: count, on: isDay, what: text(L.entry), amount: cents, tax: cents }, { why: text(L.entry), agreed: isDay }))
  } };

  /* A year of visits to a lawn (parts/programme). */
  function whole(least, most) { return number(function (value) { return Math.floor(value) === value && value >= least && value <= most; }); }
  var programme = of({ wanted: whole(1, K.most_visits), start: isDay }, {
    tasks: { list: isId }, cuts: whole(0, K.most_cuts), visits: many(of({ on: isDay }, { tasks: { list: isId }, plan: isId, put: isDay, done: isDay, skipped: flag })),
    quote: of({
      on: isDay, currency: like(/^[A-Z]{3}$/), rate: number(function (share) { return share >= 0 && share <= 1; }), inside: flag, before_tax: cents, tax: cents, total: cents
    }, { until: isDay, lines: many(of({ name: text(L.entry), amount: cents, tax: cents })), area: isArea, accepted: isDay })
  });

  /* What was seen of a season, with the days (parts/seen-here). */
  var seen = { fields: { soil: text(L.measure), soil_depth: text(L.measure), soil_on: isDay, green_up: isDay, last_frost: isDay } };

  function isPiece(value) {
    var clean = Swardbook.rows.sound(piece, value);
    return Boolean(clean) && clean.whole;
  }

  /* A short name for a text, the same wherever it is made. */
  function sign(words) {
    var one = 0x811c9dc5, other = 0x1000193;
    for (var at = 0; at < words.length; at += 1) {
      one = Math.imul(one ^ words.charCodeAt(at), 16777619);
      other = Math.imul(other + words.charCodeAt(at), 0x9e3779b1) ^ other >>> 15;
    }
    return (one >>> 0).toString(36) + (other >>> 0).toString(36);
  }

  /* Rows of a list, each with an id that comes of what is in it. */
  function listed(field) {
    return function (found) {
      var times = new Map();
      if (!S.isRecord(found) || found.v !== VERSION || !Array.isArray(found[field])) { return null; }
      return found[field].map(function (row) {
        var words = JSON.stringify(row), before = times.get(words) || 0;
        times.set(words, before + 1);
        return { id: 'was-' + sign(words) + '-' + before, row: row };
      });
    };
  }

  /* The job that was chosen then stays chosen. */
  function oldJobs(found) {
    var rows = listed('jobs')(found), chosen = rows && rows[found.chosen];
    if (chosen && Swardbook.preferences.get('job') === null) { Swardbook.preferences.set('job', chosen.id); }
    return rows;
  }

  function oldDays(found) {
    if (!S.isRecord(found) || found.v !== VERSION || !S.isRecord(found.days)) { return null; }
    return Object.keys(found.days).map(function (date) { return { id: isDate(date) ? date : null, row: found.days[date] }; });
  }

  function oldSheet(found) {
    if (!S.isRecord(found) || found.v !== VERSION) { return null; }
    var row = Object.assign({}, found);
    delete row.v;
    return [{ id: 'sheet', row: row }];
  }

  var KINDS = {
    jobs: {
      most: 200, old: oldJobs, shape: { needed: ['plan', 'grass', 'place', 'site', 'area', 'on'], fields: {
        plan: isId, grass: isId, place: isId, site: isId, area: isArea, on: isDay, typed: text(L.answer), name: text(L.job), start: like(CLOCK), crew: isCrew,
        done: days, put: days,
        without: { list: isId }, chosen: { list: isId }, rain: { each: number(function (mm) { return mm >= 0 && mm <= K.most_rain_mm; }), named: isDay },
        visit: { each: text(L.answer), named: isId }, key: or('', like(EVENT_KEY)), money: money
      } }
    },
    record: {
      most: 5000, old: listed('entries'), shape: { needed: ['work', 'date', 'lawn', 'product'], rest: text(L.entry), fields: {
        work: isId, date: isDate, lawn: like(LAWN), grass: or('', isId), product: function (value) { return text(L.entry)(value) && value !== ''; }
      } }
    },
    lawns: {
      most: 500, shape: { needed: ['code', 'grass', 'place'], fields: {
        code: like(LAWN), grass: isId, place: isId, site: isId, area: text(L.answer), town: text(L.answer), travel: text(L.answer), machines: { list: isId },
        facts: { each: text(L.answer), named: isId }, pieces: { list: isPiece }, programme: programme, seen: seen
      } }
    },
    lawn: { most: 100, old: listed('pieces'), shape: piece },
    inspection: { under: 'visit', merges: true, isId: function (id) { return id === 'sheet'; }, old: oldSheet, shape: sheet },
    seen: { most: 400, merges: true, isId: isId, shape: seen },
    inspections: { merges: true, shape: sheet },
    holds: {
      merges: true, isId: isDate, old: oldDays,
      shape: { fields: { at: or('', like(CLOCK)), all: answers, tasks: { each: answers, named: isId } } }
    }
  };

  Swardbook.kept = function (name) {
    opened[name] = opened[name] || Swardbook.collection(KINDS[name].under || name, KINDS[name]);
    return opened[name];
  };
  /* What is sound of a row that came from elsewhere, a file: {row, whole}, or null. */
  Swardbook.kept.sound = function (name, row) { return Swardbook.rows.sound(KINDS[name].shape, row); };
  /* Names of the fields that are wrong in it, or wanting. */
  Swardbook.kept.amiss = function (name, row) {
    var shape = KINDS[name].shape;
    return Object.keys(shape.fields).filter(function (field) {
      if (!S.isRecord(row) || !S.own(row, field)) { return (shape.needed || []).indexOf(field) >= 0; }
      var clean = Swardbook.rows.sound(shape.fields[field], row[field]);
      return !clean || !clean.whole;
    });
  };
  Swardbook.kept.isId = isId;
  Swardbook.kept.isDay = isDay;
  Swardbook.kept.isArea = isArea;
})();
