/* The device's storage, which may be full, refused or blocked: nothing here throws. Every key of the book begins with 'swardbook.'.
   What could not be read is never overwritten: it goes under 'swardbook.aside.<its key>.<number>' until the reader deals with it. */
(function () {
  'use strict';
  var ASIDE = 'swardbook.aside.';
  var state = '', told = [];

  function became(now) {
    if (state === now) { return; }
    state = now;
    tell();
  }

  function tell() { told.slice().forEach(function (act) { act(); }); }

  function get(key) {
    try {
      return window.localStorage.getItem(key);
    } catch (error) {
      became('blocked');
      return null;
    }
  }

  /* Whether it was kept. */
  function set(key, text) {
    try {
      window.localStorage.setItem(key, text);
    } catch (error) {
      became(error && error.name === 'QuotaExceededError' ? 'full' : 'blocked');
      return false;
    }
    became('');
    return true;
  }

  function remove(key) {
    try {
      window.localStorage.removeItem(key);
      return true;
    } catch (error) {
      became('blocked');
      return false;
    }
  }

  function keys(prefix) {
    var found = [];
    try {
      for (var at = 0; at < window.localStorage.length; at += 1) {
        var key = window.localStorage.key(at);
        if (key !== null && key.slice(0, prefix.length) === prefix) { found.push(key); }
      }
    } catch (error) {
      became('blocked');
    }
    return found.sort();
  }

  /* Whether a copy stands aside; one that stands there already is not made twice. */
  function copyAside(key, text) {
    for (var number = 1; ; number += 1) {
      var there = get(ASIDE + key + '.' + number);
      if (there === text) { return true; }
      if (there === null) {
        var kept = set(ASIDE + key + '.' + number, text);
        if (kept) { tell(); }
        return kept;
      }
    }
  }

  /* Moves what could not be read out of the way; false where there is no room, and it stays where it was. */
  function moveAside(key, text) { return copyAside(key, text) && remove(key); }

  Swardbook.device = {
    get: get, set: set, remove: remove, keys: keys, copyAside: copyAside, moveAside: moveAside, tell: tell,
    /* '' while things are kept, else 'full' or 'blocked'. */
    state: function () { return state; },
    /* Calls `act` when that changes, or when something was set aside or dealt with. Returns what ends that. */
    follow: function (act) {
      told.push(act);
      return function () { told = told.filter(function (each) { return each !== act; }); };
    },
    /* Keys of what was set aside from the keys of one collection. */
    aside: function (collection) { return keys(ASIDE + 'swardbook.' + collection + '.'); },
    isAside: function (key) { return key.slice(0, ASIDE.length) === ASIDE; }
  };
})();
