/* A collection of rows: the one door to what a reader keeps. Whoever uses it asks and changes it only through the functions below, so
   that where rows are kept may change without their noticing. A change goes in field by field against what is kept at that moment
   (1-shape.js). What the device does not take stays on this page, is offered as a file (6-notice.js) and is tried again. */
(function () {
  'use strict';
  var S = Swardbook.shape, D = Swardbook.device, opened = [];

  /* kind: {shape, most, isId, old, merges}; see 5-kept.js. */
  function Collection(name, kind) {
    var rows = new Swardbook.rows.Rows(name, kind), whole = 'swardbook.' + name, unkept = new Map(), dropped = new Set(), told = [], reason = '', quiet = 0;

    function tell() {
      if (quiet) { return; }
      told.slice().forEach(function (act) { act(); });
      D.tell();
    }

    /* Keeps a row, or takes it off where `after` is undefined; what cannot be kept waits on this page. */
    function put(id, before, after, at) {
      if (after === undefined ? rows.remove(id) : rows.write(id, after, at)) { unkept.delete(id); return true; }
      var waiting = unkept.get(id);
      unkept.set(id, { before: waiting ? waiting.before : before, after: after, at: at });
      reason = rows.stuck.has(rows.prefix + id) ? 'stuck' : D.state() || 'full';
      return false;
    }

    function putAgain(id) {
      var waiting = unkept.get(id), there = rows.read(id);
      if (waiting.after === undefined || !there) { return put(id, waiting.before, waiting.after, waiting.at); }
      return put(id, there.row, S.merged(waiting.before, waiting.after, there.row), there.at);
    }

    function flush() {
      if (!unkept.size && !rows.stuck.size) { return; }
      rows.unstick();
      Array.from(unkept.keys()).forEach(putAgain);
      takeOver();
      tell();
    }

    /* The whole list of an earlier edition, row by row; it goes once all of it stands, or stands aside. */
    function takeOver() {
      var text = kind.old ? D.get(whole) : null, list = null, stand = true;
      if (text === null) { return; }
      if (text === '') { D.remove(whole); return; }
      try { list = kind.old(JSON.parse(text)); } catch (error) { list = null; }
      if (!list) {
        if (!D.moveAside(whole, text)) { rows.stuck.set(whole, text); }
        return;
      }
      list = list.map(function (each) { return { id: each.id, clean: each.id ? Swardbook.rows.sound(kind.shape, each.row) : null }; });
      if (!list.every(function (each) { return each.clean && each.clean.whole; }) && !D.copyAside(whole, text)) {
        rows.stuck.set(whole, text);
        stand = false;
      }
      list.forEach(function (each, at) { if (each.clean && !dropped.has(each.id)) { stand = taken(each.id, each.clean.row, at) && stand; } });
      if (stand) { D.remove(whole); }
    }

    /* The same row has the same id wherever it is taken over, so that two tabs may do it at once. */
    function taken(id, row, at) {
      if (unkept.has(id)) { return putAgain(id); }
      var there = rows.read(id), wanted = !there ? row : kind.merges ? S.merged({}, row, there.row) : there.row;
      return there && S.same(wanted, there.row) ? true : put(id, there && there.row, wanted, there ? there.at : at);
    }

    function now(id) {
      var waiting = unkept.get(id), there = rows.held.get(id);
      if (!waiting) { return there ? { id: id, at: there.at, row: there.row } : null; }
      if (waiting.after === undefined) { return null; }
      return { id: id, at: waiting.at, row: there ? S.merged(waiting.before, waiting.after, there.row) : waiting.after };
    }

    /* As it is kept at this moment, whether or not another tab's change was told here. */
    function fresh(id) {
      rows.read(id);
      return now(id);
    }

    function all() {
      var ids = new Set(Array.from(rows.held.keys()).concat(Array.from(unkept.keys())));
      return Array.from(ids).map(now).filter(Boolean).sort(function (one, other) { return one.at - other.at || (one.id < other.id ? -1 : 1); });
    }

    function last() {
      var most = -1;
      [rows.held, unkept].forEach(function (each) { each.forEach(function (one) { most = Math.max(most, one.at); }); });
      return most;
    }

    function readAll() {
      rows.readAll();
      takeOver();
    }

    readAll();

    this.most = kind.most || Infinity;
    /* [{id, row}] in order; the rows are the caller's own copies. */
    this.all = function () { return all().map(function (each) { return { id: each.id, row: S.copy(each.row) }; }); };
    this.get = function (id) {
      var found = now(id);
      return found && S.copy(found.row);
    };
    /* How many more it takes. */
    this.room = function () { return Math.max(0, this.most - all().length); };
    /* id: only where a row has a name of its own, such as a date. Returns the id. */
    this.add = function (row, id) {
      var made = id || Swardbook.rows.random();
      put(made, undefined, S.copy(row), last() + 1);
      tell();
      return made;
    };
    /* Puts what changed from `before` to `after` into the row; false where the row is gone. */
    this.change = function (id, before, after) {
      var there = fresh(id);
      if (!there) { return false; }
      if (!S.same(before, after)) { put(id, there.row, S.copy(S.merged(before, after, there.row)), there.at); }
      tell();
      return true;
    };
    /* What `restore` wants; null where the row was gone already. */
    this.remove = function (id) {
      var there = fresh(id);
      if (!there) { return null; }
      dropped.add(id);
      if (rows.held.has(id)) { put(id, rows.held.get(id).row, undefined, there.at); } else { unkept.delete(id); }
      tell();
      return there;
    };
    /* Brings a row back to its place in the order; one that another tab brought back stays as it is. */
    this.restore = function (removed) {
      var waited = unkept.delete(removed.id), there = rows.read(removed.id);
      dropped.delete(removed.id);
      if (!there || waited) { put(removed.id, there && there.row, removed.row, removed.at); }
      tell();
    };
    /* Whether this book knows every field of a row. */
    this.understood = function (id) {
      var found = now(id);
      return Boolean(found) && Object.keys(found.row).every(function (field) { return S.own(kind.shape.fields, field); });
    };
    /* Does several things, and tells of them once. */
    this.together = function (act) {
      quiet += 1;
      act();
      quiet -= 1;
      tell();
    };
    /* Calls `act` with every change, here or in another tab. Returns what ends that. */
    this.follow = function (act) {
      told.push(act);
      return function () { told = told.filter(function (each) { return each !== act; }); };
    };
    this.flush = flush;
    this.unkept = function () { return unkept.size; };
    /* Why nothing is kept: '', 'full', 'blocked', or 'stuck' behind what could not be read. */
    this.reason = function () { return unkept.size ? reason : D.state() === 'blocked' ? 'blocked' : ''; };
    /* [{key, text, later}] of what could not be read; later: of a later edition, and not ours to delete. */
    this.aside = function () {
      var found = D.aside(name).map(function (key) { return { key: key, text: D.get(key) || '', later: false }; });
      rows.stuck.forEach(function (text, key) { found.push({ key: key, text: text, later: key !== whole && rows.isLater(text) }); });
      return found;
    };
    this.deleteAside = function (each) {
      D.remove(each.key);
      rows.stuck.delete(each.key);
      flush();
      readAll();
      tell();
    };
    this.bringBack = function (each) {
      D.set(each.key, each.text);
      readAll();
      tell();
    };
    /* Another tab changed what stands under `key`; null for all of it. */
    this.changedElsewhere = function (key) {
      var ours = key === null || key === whole || key.slice(0, rows.prefix.length) === rows.prefix;
      if (!ours) { return; }
      if (key === null || key === whole) { readAll(); } else { rows.raced(key.slice(rows.prefix.length)); }
      tell();
    };
  }

  function unsaved() { return opened.some(function (each) { return each.unkept(); }); }
  function flushAll() { opened.forEach(function (each) { each.flush(); }); }
  function readAgain() { opened.forEach(function (each) { each.changedElsewhere(null); }); }
  function leaving(event) {
    event.preventDefault();
    event.returnValue = '';
  }

  D.follow(function () { window[unsaved() ? 'addEventListener' : 'removeEventListener']('beforeunload', leaving); });
  window.addEventListener('storage', function (event) {
    opened.forEach(function (each) { each.changedElsewhere(event.key); });
    if (event.key === null || D.isAside(event.key)) { D.tell(); }
    if (event.newValue === null) { flushAll(); } /* Room may have come free. */
  });
  window.addEventListener('pageshow', function (event) { if (event.persisted) { readAgain(); } });
  document.addEventListener('visibilitychange', function () { if (!document.hidden) { flushAll(); } });

  Swardbook.collection = function (name, kind) {
    var made = new Collection(name, kind);
    opened.push(made);
    return made;
  };
})();
