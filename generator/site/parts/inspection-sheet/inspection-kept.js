/* Where the sheet that is being filled in is kept: with the chosen lawn, or as the sheet of no lawn. Of a lawn's answers those that stay the
   same go with the lawn itself (assets/lawns/1-lawns.js). */
(function () {
  'use strict';
  var NONE = 'sheet';

  function parted(spec, sheet) {
    var lasting = {}, rest = {};
    Object.keys(sheet.answers || {}).forEach(function (id) {
      var question = spec.questions.filter(function (each) { return each.id === id; })[0];
      (question && question.lasting ? lasting : rest)[id] = sheet.answers[id];
    });
    return { facts: lasting, sheet: Object.assign({}, sheet, { answers: rest }) };
  }

  function put(rows, id, before, after) { if (!rows.change(id, before, after)) { rows.add(after, id); } }

  Swardbook.inspectionKept = {
    /* {head, answers, ticks} as they are kept. */
    read: function () { return Swardbook.lawns.inspection(); },
    /* Only what was changed goes in: another tab may hold other answers of the same sheet. */
    keep: function (spec, before, after) {
      var lawn = Swardbook.lawns.chosen();
      if (!lawn) { put(Swardbook.kept('inspection'), NONE, before, after); return; }
      var was = parted(spec, before), now = parted(spec, after);
      put(Swardbook.kept('inspections'), lawn.id, was.sheet, now.sheet);
      if (!Swardbook.shape.same(was.facts, now.facts)) { Swardbook.lawns.remember(lawn.id, was.facts, now.facts); }
    },
    follow: function (act) { Swardbook.lawns.follow(act); }
  };
})();
