/* The entries that are kept, {"v": 1, "entries": [{column: text}]}, on this device and nowhere else; and what is wrong with one. Anything
   may stand in storage: each entry is looked at when it is read. */
(function () {
  'use strict';
  window.Swardbook = window.Swardbook || {};
  var KEY = 'swardbook.record';
  var VERSION = 1;
  var MOST = 5000;
  var LONGEST = 200;
  var LAWN = /^[A-Za-z0-9][A-Za-z0-9-]{0,23}$/;
  var DAMAGED = 'The record kept on this device is damaged or of another version and is left out. It is set aside on this device as it was; new entries start a new one.';
  var NOT_KEPT = 'This browser keeps nothing for this page, so entries last only until it is closed. Export them.';

  function isDate(text) {
    var parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
    var day = parts && new Date(Date.UTC(+parts[1], +parts[2] - 1, +parts[3]));
    return Boolean(parts) && day.getUTCMonth() === +parts[2] - 1 && day.getUTCDate() === +parts[3];
  }

  function numberFault(column, value) {
    var first = null;
    var units = [column.unit].concat(column.also);
    for (var i = 0; i < units.length; i += 1) {
      try {
        var si = Swardbook.quantity.read(value, units[i]);
        return si < 0 && column.unit !== '°C' ? 'This is less than nothing.' : '';
      } catch (problem) {
        if (!problem.sentence) throw problem;
        first = first || problem.sentence;
      }
    }
    return first;
  }

  /* Why a value cannot stand in its column, as a sentence; '' where it can. */
  function fault(column, value, grasses) {
    if (!value) return column.needed ? 'Fill this in.' : '';
    if (value.length > LONGEST) return 'This is too long.';
    if (column.id === 'lawn' && !LAWN.test(value)) return 'Use letters, digits and hyphens only, such as TL-014; no name and no address.';
    if (column.kind === 'date' && !isDate(value)) return 'This is not a date; write year, month and day, as 2026-10-12.';
    if (column.kind === 'time' && !/^([01]?\d|2[0-3]):[0-5]\d$/.test(value)) return 'This is not a time; write hours and minutes, as 14:30.';
    if (column.kind === 'grass' && !Object.prototype.hasOwnProperty.call(grasses, value)) return 'This book has no such grass.';
    if (column.kind === 'choice' && column.choices.indexOf(value) < 0) return 'This is not among the choices.';
    return column.kind === 'number' ? numberFault(column, value) : '';
  }

  /* Only columns of this book, only text; null for what is no entry. */
  function entryOf(found, spec) {
    if (found === null || typeof found !== 'object') return null;
    var entry = {};
    var sound = spec.columns.every(function (column) {
      var value = Object.prototype.hasOwnProperty.call(found, column.id) ? found[column.id] : '';
      if (typeof value !== 'string') return false;
      if (value) entry[column.id] = value;
      /* A grass that left the book leaves its entry readable. */
      return column.kind === 'grass' ? value.length <= LONGEST : !fault(column, value, spec.grasses);
    });
    return sound ? entry : null;
  }

  /* {entries, notice} of what storage holds; it never throws. */
  function read(spec) {
    var text = null, kept = null;
    try {
      text = window.localStorage.getItem(KEY);
    } catch (error) {
      return { entries: [], notice: NOT_KEPT };
    }
    if (text === null) return { entries: [], notice: '' };
    try { kept = JSON.parse(text); } catch (error) { kept = null; }
    var sound = kept !== null && typeof kept === 'object' && kept.v === VERSION && Array.isArray(kept.entries) && kept.entries.length <= MOST;
    var entries = sound ? kept.entries.map(function (each) { return entryOf(each, spec); }) : [];
    if (sound && entries.indexOf(null) < 0) return { entries: entries, notice: '' };
    try { window.localStorage.setItem(KEY + '.aside', text); } catch (error) { /* No room: it still stands under its own key until the next entry. */ }
    return { entries: entries.filter(Boolean), notice: DAMAGED };
  }

  /* '' when kept, else why not. */
  function write(entries) {
    try {
      window.localStorage.setItem(KEY, JSON.stringify({ v: VERSION, entries: entries }));
      return '';
    } catch (error) {
      return NOT_KEPT;
    }
  }

  Swardbook.workKept = { key: KEY, most: MOST, read: read, write: write, fault: fault };
})();
