/* What a kept value has to look like, and how two changes of one value become one. Anything may stand in storage.
   A shape is a test (value -> boolean), or
     {fields: {name: shape}, needed: [names], rest: shape}   a record; what is not named stays as it is, unless `rest` says otherwise
     {each: shape, named: test}                              a record of any names that pass the test
     {list: test}                                            a list of what passes the test */
(function () {
  'use strict';
  var own = Swardbook.own;

  function isRecord(value) { return value !== null && typeof value === 'object' && !Array.isArray(value); }
  function same(one, other) { return JSON.stringify(one) === JSON.stringify(other); }
  function copy(value) { return value === undefined ? undefined : JSON.parse(JSON.stringify(value)); }
  function anything() { return true; }
  function nothing() { return false; }

  function partOf(shape, name) {
    if (name === '__proto__') { return nothing; }
    if (shape.each) { return shape.named(name) ? shape.each : nothing; }
    return own(shape.fields, name) ? shape.fields[name] : shape.rest || anything;
  }

  /* A copy without what is unsound; undefined where nothing is left that makes sense. */
  function pruned(shape, value) {
    if (typeof shape === 'function') { return shape(value) ? value : undefined; }
    if (shape.list) { return Array.isArray(value) ? value.filter(shape.list) : undefined; }
    if (!isRecord(value)) { return undefined; }
    var out = {};
    Object.keys(value).forEach(function (name) {
      var found = pruned(partOf(shape, name), value[name]);
      if (found !== undefined) { out[name] = found; }
    });
    return (shape.needed || []).every(function (name) { return own(out, name); }) ? out : undefined;
  }

  function mergedRecord(before, after, now) {
    var out = Object.assign({}, now);
    Object.keys(before).forEach(function (name) { if (!own(after, name)) { delete out[name]; } });
    Object.keys(after).forEach(function (name) {
      if (name === '__proto__' || own(before, name) && same(before[name], after[name])) { return; }
      out[name] = merged(own(before, name) ? before[name] : undefined, after[name], own(now, name) ? now[name] : undefined);
    });
    return out;
  }

  /* `now` with what changed from `before` to `after`: records by field, lists by what came and went, all else as a whole. */
  function merged(before, after, now) {
    if (isRecord(after) && isRecord(now)) { return mergedRecord(isRecord(before) ? before : {}, after, now); }
    if (!Array.isArray(before) || !Array.isArray(after) || !Array.isArray(now)) { return after; }
    return now.filter(function (each) { return before.indexOf(each) < 0 || after.indexOf(each) >= 0; })
      .concat(after.filter(function (each) { return before.indexOf(each) < 0 && now.indexOf(each) < 0; }));
  }

  /* One field of a record under another name, the rest as it is. */
  function renamed(row, from, to) {
    if (!isRecord(row) || !own(row, from) || own(row, to)) { return row; }
    var out = Object.assign({}, row);
    out[to] = out[from];
    delete out[from];
    return out;
  }

  Swardbook.shape = { pruned: pruned, merged: merged, same: same, copy: copy, own: own, isRecord: isRecord, renamed: renamed };
})();
