/* What an entry begins with: the chosen lawn, and what a step of a job hands over in the address of the page. The reader corrects it. */
(function () {
  'use strict';

  /* {lawn, grass, area} of the chosen lawn, as far as they are known; {} for none. */
  function ofLawn() {
    var lawn = Swardbook.lawns.chosen(), entry = {};
    if (!lawn) return entry;
    entry.lawn = lawn.code;
    entry.grass = lawn.grass;
    if (lawn.area) entry.area = lawn.area;
    return entry;
  }

  /* What the address says, by column; {} for nothing, or nothing that reads as such. */
  function ofAddress(columns) {
    var found = Swardbook.fragment.read(window.location.hash, function (name, value) {
      if (columns.indexOf(name) < 0) return null;
      try {
        return decodeURIComponent(value).slice(0, Swardbook.contract.kept.longest.entry) || null;
      } catch (error) {
        return null; /* Cut off in the middle of a sign. */
      }
    });
    if (!found) return {};
    delete found.v;
    return found;
  }

  Swardbook.recordGiven = { ofLawn: ofLawn, ofAddress: ofAddress };
})();
