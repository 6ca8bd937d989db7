/* This year by what a reader has seen, as generator/season/seen has it: the same arithmetic over the same figures, since the reading is the
   reader's own. Formulas are compiled (generator/site/shared/seen_script.py). Twin: seen. */
(function () {
  'use strict';
  var DAYS = 365, WEEK = 7, HUNDREDTHS = 100, ZERO_CELSIUS_K = 273.15, places = {};

  /* Called by the script of each place; see season/seen/seen_place.py. */
  Swardbook.seenPlace = function (place, data) { places[place] = data; };

  function around(days) { return (days % DAYS + DAYS) % DAYS; }
  function signed(days) { return around(days + Math.floor(DAYS / 2)) - Math.floor(DAYS / 2); }
  function formula(name, values) { return Swardbook.formula.answer(Swardbook.seenRules.formulas[name], values); }
  function dayOf(iso) { return Swardbook.dates.dayOfYear(iso); }

  function half(place, day) {
    var warming = around(place.hottest - place.coldest);
    return around(day - place.coldest) < warming ? { first: place.coldest, length: warming, rising: 1 } : { first: place.hottest, length: DAYS - warming, rising: -1 };
  }

  function isOver(place, on, today) {
    var of = half(place, dayOf(on)), gone = Swardbook.dates.fromIso(today) - Swardbook.dates.fromIso(on);
    return gone > of.length - around(dayOf(on) - of.first) || gone < 0;
  }

  function later(seen, usual) { return formula('later', { seen: seen, usual: usual, most: Swardbook.seenRules.most }); }
  function idle(of, on, why, more) { return Object.assign({ of: of, on: on, days: null, idle: why, usual: null, usualC: null }, more); }
  function telling(of, on, days, more) { return Object.assign({ of: of, on: on, days: days, idle: null, usual: null, usualC: null, isMost: Math.abs(days) >= Swardbook.seenRules.most }, more); }

  function bySoil(place, site, notes) {
    if (!notes.soil || !notes.soil_on) { return null; }
    var R = Swardbook.seenRules, on = dayOf(notes.soil_on), of = half(place, on), curve = [], seen = around(on - of.first);
    for (var day = 0; day <= of.length; day += 1) { curve.push((place.soil[around(of.first + day)] + place.offsets[site]) / HUNDREDTHS); }
    var usualC = curve[seen], begin = Math.min(Math.max(seen - Math.floor(WEEK / 2), 0), of.length - WEEK);
    if ((curve[begin + WEEK] - curve[begin]) * of.rising < R.least_change) { return idle('soil', notes.soil_on, 'still', { usualC: usualC }); }
    var kelvins = curve.map(function (value) { return value + ZERO_CELSIUS_K; });
    var usual = formula('lag', { depth: notes.soil_depth ? Swardbook.quantity.read(notes.soil_depth, 'mm') : R.depth, told_depth: R.depth, diffusivity: R.diffusivity }) +
      formula('soil', { reading: Swardbook.quantity.read(notes.soil, '°C'), rising: of.rising, soil: kelvins.slice(0, -1), next_soil: kelvins.slice(1) });
    return telling('soil', notes.soil_on, later(seen, usual), { usual: around(of.first + Swardbook.formula.round(usual)), usualC: usualC });
  }

  function dated(of, on, usual) {
    var days = signed(dayOf(on) - usual);
    return telling(of, on, later(days, 0), { usual: usual, usualDays: days });
  }

  function byGreenUp(grass, notes) {
    if (!notes.green_up) { return null; }
    return grass.green_up === null ? idle('green_up', notes.green_up, 'no_green_up') : dated('green_up', notes.green_up, grass.green_up);
  }

  function byFrost(place, grass, notes, today) {
    var on = notes.last_frost;
    if (!on) { return null; }
    if (isOver(place, on, today)) { return idle('last_frost', on, 'over'); }
    if (half(place, dayOf(on)).rising < 0 || grass.last_frost === null) { return idle('last_frost', on, 'not_late'); }
    var found = dated('last_frost', on, grass.last_frost);
    return found.days > 0 ? found : idle('last_frost', on, 'not_late');
  }

  function moved(place, kind, edges, warmth, frost) {
    var R = Swardbook.seenRules, first = edges[0], best = edges[1], last = edges[2], opens = edges[3], closes = edges[4];
    function has(by, what) { return by.indexOf(what) >= 0; }
    function by(note, day, earlier, most) {
      if (!note) { return 0; }
      var seen = dayOf(note.on), of = half(place, seen), at = around(day - of.first);
      return at >= of.length ? 0 : formula('move', { days: note.days, ahead: at - around(seen - of.first), fade: R.fade, earlier: earlier, later: most });
    }
    var warm = has(opens, 'w') ? by(warmth, first, has(opens, 'f') ? 0 : edges[5], R.most) : 0, cold = has(opens, 'f') ? by(frost, first, 0, R.most) : 0;
    if (cold) { cold = Math.max(cold, 1 + signed(dayOf(frost.on) - first)); }
    var opening = has(opens, 'f') ? Math.max(warm, cold) : warm, closing = has(closes, 'w') ? by(warmth, last, R.most, has(closes, 'f') ? 0 : edges[6]) : 0;
    var length = around(last - first), middle = opens ? by(warmth, best, R.most, R.most) : 0;
    var begins = Math.min(opening, length), ends = Math.max(length + closing, begins), finest = Math.min(Math.max(around(best - first) + middle, begins), ends);
    return {
      kind: kind, usual: [first, best, last], moved: [begins, finest, ends].map(function (days) { return around(first + days); })
    };
  }

  /* {told, windows, every: those that do not move too} of a grass at a place and site, on a day. notes: {soil, soil_depth: as typed, soil_on, green_up, last_frost: days}. */
  function year(id, grassId, site, notes, today) {
    var place = places[id], at = Swardbook.own(place.offsets, site) ? site : 'open', grass = place.grasses[grassId][at];
    var told = [bySoil(place, at, notes), byGreenUp(grass, notes)].filter(Boolean).map(function (each) {
      return isOver(place, each.on, today) ? idle(each.of, each.on, 'over') : each;
    });
    var newest = told.reduce(function (best, each) { return each.days !== null && (!best || each.on > best.on) ? each : best; }, null);
    told = told.map(function (each) { return each === newest || each.days === null ? each : idle(each.of, each.on, 'older', { usual: each.usual, usualC: each.usualC }); });
    var frost = byFrost(place, grass, notes, today), windows = [];
    if (frost) { told.push(frost); }
    Object.keys(grass.windows).forEach(function (kind) {
      grass.windows[kind].forEach(function (edges) { windows.push(moved(place, kind, edges, newest, frost && frost.days !== null ? frost : null)); });
    });
    told.forEach(function (each) { each.half = half(place, dayOf(each.on)).rising > 0 ? 'warming' : 'cooling'; });
    return { told: told, every: windows, windows: windows.filter(function (each) { return each.usual.join() !== each.moved.join(); }) };
  }

  Swardbook.seen = Object.assign(Swardbook.seen || {}, {
    year: year,
    knows: function (place, grass) { return Swardbook.own(places, place) && Swardbook.own(places[place].grasses, grass); },
    /* Promises the rules and a place's figures. folder: where they lie. */
    ready: function (folder, place) {
      return Promise.all([Swardbook.seenRules ? null : Swardbook.load(folder + 'rules.js'), places[place] ? null : Swardbook.load(folder + place + '.js')]);
    }
  });
})();
