/* The lawns that a reader keeps (assets/store/5-kept.js), and the one that is chosen: in the bar of every page, once for all of them. Choosing
   one chooses its grass, place, site and soil as well, so that whatever goes by those goes by the lawn. */
(function () {
  'use strict';
  /* What a chosen lawn chooses, and the preferences that hold it. The name is not 'lawn': under that an earlier edition kept its pieces. */
  var CHOSEN = 'lawn-chosen', WITH_IT = ['grass', 'place', 'site'], SOIL = 'soil-type', told = [];

  function rows() { return Swardbook.kept('lawns'); }

  function all() {
    return rows().all().map(function (each) { return Object.assign({ facts: {}, pieces: [], machines: [] }, each.row, { id: each.id }); })
      .sort(function (one, other) { return one.code < other.code ? -1 : one.code > other.code ? 1 : 0; });
  }

  function find(test) { return all().filter(test)[0] || null; }

  function chosen() {
    var id = Swardbook.preferences.get(CHOSEN);
    return id ? find(function (each) { return each.id === id; }) : null;
  }

  /* id: '' for none. What the reader chose before for grass and place stays when no lawn is chosen. */
  function choose(id) {
    var lawn = find(function (each) { return each.id === id; });
    if (lawn) {
      WITH_IT.forEach(function (name) { if (lawn[name]) { Swardbook.preferences.set(name, lawn[name]); } });
      if (Swardbook.own(lawn.facts, SOIL)) { Swardbook.preferences.set('soil', lawn.facts[SOIL]); }
    }
    Swardbook.preferences.set(CHOSEN, lawn ? id : '');
  }

  /* A measure of a lawn in SI units; null where it has none, or none that can be read. */
  function measured(text, unit) {
    try {
      return text ? Swardbook.quantity.read(text, unit) : null;
    } catch (problem) {
      Swardbook.sentenceOf(problem);
      return null;
    }
  }

  /* The kept jobs of a lawn, as rows of `kept`, the latest day first; of two on one day, the one kept last. */
  function jobs(lawn) {
    return Swardbook.kept('jobs').all().filter(function (each) { return each.row.name === lawn.code; }).reverse()
      .sort(function (one, other) { return one.row.on < other.row.on ? 1 : one.row.on > other.row.on ? -1 : 0; });
  }

  function tell() { told.slice().forEach(function (act) { act(); }); }

  /* The inspection of the chosen lawn, or of no lawn where none is chosen: {head, answers, ticks, lawn}. What stays the same of a lawn from one
     inspection to the next is kept with the lawn, as its facts, and nowhere twice. */
  function inspection() {
    var lawn = chosen(), sheet = lawn ? Swardbook.kept('inspections').get(lawn.id) : Swardbook.kept('inspection').get('sheet');
    var found = Object.assign({ head: {}, answers: {}, ticks: {} }, sheet, { lawn: lawn });
    if (lawn) {
      found.answers = Object.assign({}, found.answers, lawn.facts);
      found.head = Object.assign({}, found.head, { lawn: lawn.code });
    }
    return found;
  }

  Swardbook.lawns = {
    rows: rows,
    /* [{id, code, grass, place, site, area, town, travel, machines, facts, pieces}] by code. */
    all: all,
    byCode: function (code) { return find(function (each) { return each.code === code; }); },
    chosen: chosen,
    choose: choose,
    measured: measured,
    noArea: 'This is not a lawn; give an area above 0, such as 240 m2.',
    /* [m2], or null. */
    area: function (lawn) { return measured(lawn.area, 'm2'); },
    inspection: inspection,
    jobs: jobs,
    /* Puts what changed between two sets of facts into a lawn. */
    remember: function (id, before, after) {
      var row = rows().get(id);
      if (row) { rows().change(id, Object.assign({}, row, { facts: before }), Object.assign({}, row, { facts: after })); }
    },
    /* Calls `act` whenever another lawn is chosen, or a lawn or its inspection changes, here or in another tab. */
    follow: function (act) { told.push(act); }
  };

  ['lawns', 'inspection', 'inspections'].forEach(function (name) { Swardbook.kept(name).follow(tell); });
  document.addEventListener('swardbook:' + CHOSEN, tell);
})();
