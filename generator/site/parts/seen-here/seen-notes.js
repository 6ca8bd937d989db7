/* What a reader has seen this year, kept on the device: with the lawn where one is chosen, else for the place; read, refused and forgotten. */
(function () {
  'use strict';
  var FIELDS = { soil: ['soil', 'soil_depth', 'soil_on'], green_up: ['green_up'], last_frost: ['last_frost'] }, S = Swardbook.shape;

  /* Where notes of a place stand: {lawn} or {place}. */
  function keeper(place) {
    var lawn = Swardbook.lawns.chosen();
    return lawn && (!place || lawn.place === place) ? { lawn: lawn, place: lawn.place } : { lawn: null, place: place };
  }

  function notes(at) { return (at.lawn ? at.lawn.seen : at.place && Swardbook.kept('seen').get(at.place)) || {}; }

  function put(at, after) {
    var rows = Swardbook.kept(at.lawn ? 'lawns' : 'seen'), id = at.lawn ? at.lawn.id : at.place, row = rows.get(id), empty = !Object.keys(after).length;
    if (at.lawn) {
      var next = Object.assign({}, row, { seen: after });
      if (empty) { delete next.seen; }
      if (row) { rows.change(id, row, next); }
    } else if (empty) { rows.remove(id); } else if (row) { rows.change(id, row, after); } else { rows.add(after, id); }
  }

  /* A quantity that was typed, within its limits [SI]; throws a Problem. */
  function within(text, unit, code) {
    var R = Swardbook.seenRules, limits = R[code], found = Swardbook.quantity.read(text, unit);
    if (found < limits.least || found > limits.most) {
      var shown = limits[Swardbook.readerUnits.system()];
      throw new Swardbook.Problem(code, Swardbook.filled(R.words.refusals[code], { least: shown[0], most: shown[1] }));
    }
  }

  /* isKept: it was typed long ago, and is told of as what it is. */
  function seenOn(text, isKept) {
    var R = Swardbook.seenRules, day = Swardbook.dates.fromIso(text), today = Swardbook.dates.today();
    function refuse(code) { throw new Swardbook.Problem(code, R.words.refusals[code]); }
    if (day === null || !Swardbook.kept.isDay(text)) { refuse('no-date'); }
    if (day > today) { refuse('future'); }
    if (!isKept && today - day > R.longest_ago) { refuse('long-ago'); }
  }

  /* [field, sentence] of the first thing that cannot be, or null. typed: texts by field, with their units. */
  function wrong(typed, isKept) {
    var field = '';
    try {
      field = 'soil';
      if (typed.soil) { within(typed.soil, '°C', 'no-soil'); } else if (typed.soil_depth) { throw new Swardbook.Problem('not-a-temperature', Swardbook.seenRules.words.refusals['not-a-temperature']); }
      field = 'soil_depth';
      if (typed.soil_depth) { within(typed.soil_depth, 'mm', 'no-depth'); }
      ['soil_on', 'green_up', 'last_frost'].forEach(function (name) {
        field = name;
        if (typed[name] || name === 'soil_on' && typed.soil) { seenOn(typed[name] || '', isKept); }
      });
      return null;
    } catch (problem) { return [field, Swardbook.sentenceOf(problem)]; }
  }

  /* Of what is kept, only what reads: it may be another edition's, or made up. */
  function sound(found) {
    var out = {};
    Object.keys(FIELDS).forEach(function (of) {
      var typed = {};
      FIELDS[of].forEach(function (name) { if (found[name]) { typed[name] = found[name]; } });
      if ((of !== 'soil' || typed.soil) && !wrong(typed, true)) { Object.assign(out, typed); }
    });
    return out;
  }

  function without(found, of) {
    var out = S.copy(found);
    FIELDS[of].forEach(function (name) { delete out[name]; });
    return out;
  }

  Swardbook.seenNotes = { keeper: keeper, of: notes, put: put, wrong: wrong, sound: sound, without: without, FIELDS: FIELDS };
})();
