/* What is wrong with an entry of the record before it is put down, column by column. Twin: kept record. */
(function () {
  'use strict';
  var LAWN = new RegExp('^' + Swardbook.contract.kept.lawn + '$');

  function numberFault(column, value) {
    var first = null;
    var units = [column.unit].concat(column.also);
    for (var i = 0; i < units.length; i += 1) {
      try {
        var si = Swardbook.quantity.read(value, units[i]);
        return si < 0 && column.unit !== '°C' ? 'This is less than nought.' : '';
      } catch (problem) {
        first = first || Swardbook.sentenceOf(problem);
      }
    }
    return first;
  }

  /* Why a value cannot stand in its column, as a sentence; '' where it can. */
  function fault(column, value, grasses) {
    if (!value) return column.needed ? 'Fill this in.' : '';
    if (value.length > Swardbook.contract.kept.longest.entry) return 'This is too long.';
    if (column.id === 'lawn' && !LAWN.test(value)) return 'Use letters, digits and hyphens only, such as TL-014; no name and no address.';
    if (column.kind === 'date' && Swardbook.dates.fromIso(value) === null) return 'This is not a date; write year, month and day, such as 2026-10-12.';
    if (column.kind === 'time' && !/^([01]?\d|2[0-3]):[0-5]\d$/.test(value)) return 'This is not a time; write hours and minutes, such as 14:30.';
    if (column.kind === 'grass' && !Swardbook.own(grasses, value)) return 'This book has no such grass.';
    if (column.kind === 'choice' && column.choices.indexOf(value) < 0) return 'This is not among the choices.';
    return column.kind === 'number' ? numberFault(column, value) : '';
  }

  Swardbook.workKept = { fault: fault };
})();
