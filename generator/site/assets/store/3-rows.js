/* The rows of one collection as they stand on this device, each under a key of its own, so that two open tabs never write over each
   other:

     swardbook.<collection>.<row id>         {v: 1, at: place in the order, stamp, seen: earlier stamps, row}
     swardbook.<collection>                  a whole list, as earlier editions kept it: taken over once (4-collection.js)
     swardbook.aside.<key>.<number>          what could not be read, as it was, until the reader deals with it (2-device.js)
     swardbook.<name>                        a choice of the reader, plain text (preferences.js)

   What is kept under which name, and how it has to look, stands in 5-kept.js. A row of a later version (v) is left alone and unread; one
   with fields that this book does not know is kept with them. A new meaning of a field, or a stricter shape, needs a new version. */
(function () {
  'use strict';
  var VERSION = 1, ID = /^[a-z0-9][a-z0-9-]{0,59}$/, REMEMBERED_STAMPS = 24, RACE_MS = 10000;
  var S = Swardbook.shape, D = Swardbook.device;

  function random() {
    var numbers = window.crypto.getRandomValues(new Uint32Array(2));
    return numbers[0].toString(36) + numbers[1].toString(36);
  }

  /* {v, at, stamp, seen, row} of a text, or null. */
  function unfolded(text) {
    try {
      var found = JSON.parse(text);
      if (!S.isRecord(found) || typeof found.v !== 'number') { return null; }
      return {
        v: found.v, at: typeof found.at === 'number' && isFinite(found.at) ? found.at : 0, stamp: String(found.stamp),
        seen: Array.isArray(found.seen) ? found.seen : [], row: found.row
      };
    } catch (error) {
      return null;
    }
  }

  /* {row, whole} with what is sound of a row; null for none. */
  function sound(shape, row) {
    try {
      var found = S.pruned(shape, row);
      return found === undefined ? null : { row: found, whole: S.same(found, row) };
    } catch (error) {
      return null; /* So deep that nothing can be done with it. */
    }
  }

  function Rows(name, kind) {
    var prefix = 'swardbook.' + name + '.', held = new Map(), stuck = new Map(), written = new Map();

    function isId(id) { return ID.test(id) && (!kind.isId || kind.isId(id)); }

    /* Reads what is kept under a row's key: {at, row}, or undefined. */
    function read(id) {
      var key = prefix + id, text = D.get(key), there = held.get(id);
      if (there && there.text === text || text !== null && stuck.get(key) === text) { return there; }
      held.delete(id);
      stuck.delete(key);
      if (text !== null) { understand(id, key, text); }
      return held.get(id);
    }

    /* What cannot be read is set aside; where there is no room for that it is stuck, and nothing is written over it. */
    function understand(id, key, text) {
      var found = unfolded(text), clean = found && found.v === VERSION && isId(id) ? sound(kind.shape, found.row) : null;
      if (found && found.v > VERSION || !clean && !D.moveAside(key, text)) { stuck.set(key, text); }
      if (!clean) { return; }
      held.set(id, { text: text, at: found.at, stamp: found.stamp, seen: found.seen, row: clean.row });
      if (clean.whole) { return; }
      if (D.copyAside(key, text)) { write(id, clean.row, found.at); } else { stuck.set(key, text); }
    }

    /* Whether it could be kept. */
    function write(id, row, at) {
      var there = held.get(id), stamp = random().slice(0, 6), seen = there ? there.seen.concat([there.stamp]).slice(-REMEMBERED_STAMPS) : [];
      var text = JSON.stringify({ v: VERSION, at: at, stamp: stamp, seen: seen, row: row });
      if (stuck.has(prefix + id) || !D.set(prefix + id, text)) { return false; }
      written.set(id, recent(id).concat([{ stamp: stamp, before: there ? there.row : undefined, after: row, time: Date.now() }]));
      held.set(id, { text: text, at: at, stamp: stamp, seen: seen, row: row });
      return true;
    }

    function remove(id) {
      if (stuck.has(prefix + id) || !D.remove(prefix + id)) { return false; }
      held.delete(id);
      written.delete(id);
      return true;
    }

    /* What was written here a moment ago, and another tab may not have seen yet; oldest first. */
    function recent(id) {
      return (written.get(id) || []).filter(function (each) { return Date.now() - each.time <= RACE_MS; }).slice(1 - REMEMBERED_STAMPS);
    }

    /* Another tab wrote a row a moment ago. What of the changes made here it had not seen goes in once more, each in its turn. */
    function raced(id) {
      var there = read(id), missing = there ? recent(id).filter(function (each) { return each.stamp !== there.stamp && there.seen.indexOf(each.stamp) < 0; }) : [];
      if (!missing.length) { return; }
      var both = missing.reduce(function (row, each) { return S.merged(each.before, each.after, row); }, there.row);
      written.delete(id);
      if (!S.same(both, there.row)) { write(id, both, there.at); }
    }

    this.prefix = prefix;
    this.held = held;
    /* Key to text of what could be neither read nor set aside. */
    this.stuck = stuck;
    this.read = read;
    this.write = write;
    this.remove = remove;
    this.raced = raced;
    this.readAll = function () {
      var ids = D.keys(prefix).map(function (key) { return key.slice(prefix.length); });
      Array.from(held.keys()).concat(ids).forEach(read);
    };
    /* Tries once more to set aside what is stuck. */
    this.unstick = function () {
      Array.from(stuck.keys()).forEach(function (key) {
        stuck.delete(key);
        if (key.slice(0, prefix.length) === prefix) { held.delete(key.slice(prefix.length)); read(key.slice(prefix.length)); }
      });
    };
    this.isLater = function (text) { var found = unfolded(text); return Boolean(found) && found.v > VERSION; };
  }

  Swardbook.rows = { ID: ID, Rows: Rows, random: random, sound: sound };
})();
