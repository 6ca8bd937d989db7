/* The lawn that is kept: its pieces, checked one by one when they are read, because anything may stand in storage. Kept as
   {"v": 1, "pieces": [{"name", "sizes", "area" in m2, "hole"}]} on this device and nowhere else. */
(function () {
  'use strict';
  window.Swardbook = window.Swardbook || {};
  if (Swardbook.lawn) return;
  var KEY = 'swardbook.lawn';
  var VERSION = 1;
  var MOST_PIECES = 100;
  var LONGEST = { name: 80, sizes: 160, all: 60000 };
  var LARGEST_M2 = 1e9;
  var DAMAGED = 'The lawn kept on this device is damaged and is left out. The next piece starts a new one.';
  var OTHER_VERSION = 'The lawn kept on this device was made by another version of this book and is left out. The next piece starts a new one in its place.';
  var NOT_KEPT = 'This browser keeps nothing for this page, so the lawn lasts only until the page is closed.';
  var pieces = [];
  var notice = '';
  var told = [];

  function isText(value, longest) { return typeof value === 'string' && value.length <= longest; }

  function isPiece(each) {
    return each !== null && typeof each === 'object' && isText(each.name, LONGEST.name) && each.name !== '' && isText(each.sizes, LONGEST.sizes) &&
      typeof each.area === 'number' && each.area > 0 && each.area <= LARGEST_M2 && typeof each.hole === 'boolean';
  }

  /* {pieces, notice} of what storage held; it never throws. */
  function understood(text) {
    var kept;
    if (text === null) return { pieces: [], notice: '' };
    try {
      kept = text.length <= LONGEST.all ? JSON.parse(text) : null;
    } catch (error) {
      kept = null;
    }
    if (kept === null || typeof kept !== 'object') return { pieces: [], notice: DAMAGED };
    if (typeof kept.v === 'number' && kept.v !== VERSION) return { pieces: [], notice: OTHER_VERSION };
    if (kept.v !== VERSION || !Array.isArray(kept.pieces) || kept.pieces.length > MOST_PIECES || !kept.pieces.every(isPiece)) {
      return { pieces: [], notice: DAMAGED };
    }
    return { pieces: kept.pieces, notice: '' };
  }

  function read() {
    try {
      var found = understood(window.localStorage.getItem(KEY));
      pieces = found.pieces;
      notice = found.notice;
    } catch (error) {
      notice = NOT_KEPT;
    }
  }

  function keep(wanted) {
    pieces = wanted;
    notice = '';
    try {
      if (pieces.length) window.localStorage.setItem(KEY, JSON.stringify({ v: VERSION, pieces: pieces }));
      else window.localStorage.removeItem(KEY);
    } catch (error) {
      notice = NOT_KEPT;
    }
    tell();
  }

  function tell() { told.forEach(function (each) { each(); }); }

  function net() {
    return pieces.reduce(function (sum, each) { return sum + (each.hole ? -each.area : each.area); }, 0);
  }

  function together(hole) {
    return pieces.reduce(function (sum, each) { return each.hole === hole ? sum + each.area : sum; }, 0);
  }

  function isUs() { return document.documentElement.getAttribute('data-units') === 'us'; }

  Swardbook.lawn = {
    mostPieces: MOST_PIECES,
    pieces: function () { return pieces.slice(); },
    notice: function () { return notice; },
    keep: keep,
    /* [m2]; more than nothing only where it can feed a calculator. */
    area: function () { return Number(net().toPrecision(12)); },
    added: function () { return together(false); },
    takenAway: function () { return together(true); },
    fits: isPiece,
    longest: LONGEST,
    /* Calls `act` now and whenever the lawn or the units change. */
    follow: function (act) { told.push(act); act(); },
    unit: function () { return isUs() ? 'ft2' : 'm2'; },
    otherUnit: function () { return isUs() ? 'm2' : 'ft2'; },
    show: function (m2, unit) { return Swardbook.calculator.pretty(Swardbook.calculator.show(m2, unit || Swardbook.lawn.unit(), 1)); },
    /* Six figures that count: what goes into a field or a link, without a tail from conversion. */
    typed: function (m2, unit) { return Swardbook.quantity.show(m2, unit, 6, false); },
    count: function () { return pieces.length === 1 ? '1 piece' : pieces.length + ' pieces'; },
    /* Starts every element of a selector once all scripts are read. This file is not joined to those of every page and may
       run before them, so that it cannot lean on Swardbook.component. */
    begin: function (selector, start) {
      document.addEventListener('DOMContentLoaded', function () {
        Array.prototype.forEach.call(document.querySelectorAll(selector), function (root) {
          try {
            start(root);
          } catch (error) {
            console.error('swardbook: lawn-pieces did not start: ' + error.message);
          }
        });
      });
    }
  };

  read();
  window.addEventListener('storage', function (event) {
    if (event.key !== KEY && event.key !== null) return;
    read();
    tell();
  });
  document.addEventListener('DOMContentLoaded', function () { document.addEventListener('swardbook:units', tell); });
})();
