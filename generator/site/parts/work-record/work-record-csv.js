/* The record as a CSV file (RFC 4180, UTF-8) and back. A spreadsheet runs a value that begins with certain signs: such a value goes out
   behind an apostrophe, which reading takes off (generator/book/lists/shielding.py). Twin: shielding. */
(function () {
  'use strict';
  var RUN = '[' + Swardbook.contract['work-record'].run + ']', SHIELDED = new RegExp("^'*" + RUN), SHIELD = new RegExp("^'+" + RUN);

  function field(value) {
    var text = SHIELDED.test(value) ? "'" + value : value;
    return /[",\r\n]/.test(text) ? '"' + text.replace(/"/g, '""') + '"' : text;
  }

  /* columns: ids in order; entries: {id: text}. The mark at the start tells a spreadsheet that this is UTF-8. */
  function write(columns, entries) {
    var rows = entries.map(function (entry) { return columns.map(function (id) { return field(entry[id] || ''); }).join(','); });
    return '\ufeff' + [columns.join(',')].concat(rows).join('\r\n') + '\r\n';
  }

  /* Rows of {values, line, open}. open: a quote in it is never closed, and took all the rest of the file. */
  function rows(text) {
    var found = [], row = [], value = '', quoted = false, line = 1, begun = 1;
    for (var at = text.charAt(0) === '\ufeff' ? 1 : 0; at < text.length; at += 1) {
      var sign = text.charAt(at);
      if (sign === '\n') line += 1;
      if (quoted) {
        if (sign !== '"') value += sign;
        else if (text.charAt(at + 1) === '"') { value += '"'; at += 1; }
        else quoted = false;
      } else if (sign === '"' && value === '') quoted = true;
      else if (sign === ',') { row.push(value); value = ''; }
      else if (sign === '\n' || sign === '\r') {
        if (sign === '\r' && text.charAt(at + 1) === '\n') { at += 1; line += 1; }
        found.push({ values: row.concat([value]), line: begun });
        row = []; value = ''; begun = line;
      } else value += sign;
    }
    if (value !== '' || row.length) found.push({ values: row.concat([value]), line: begun, open: quoted });
    return found.filter(function (each) { return each.values.some(function (text) { return text.trim(); }); });
  }

  function plain(text) { return (SHIELD.test(text) ? text.slice(1) : text).replace(/\s+/g, ' ').trim(); }

  /* {entries: [{line, entry}], faults: [sentence]} of a text; columns: ids that may stand there. */
  function read(text, columns) {
    var found = rows(text), faults = [];
    if (!found.length) return { entries: [], faults: ['The file is empty.'] };
    var header = found[0].values.map(function (name) { return name.trim(); });
    header.forEach(function (name, at) {
      if (columns.indexOf(name) < 0) faults.push('Line 1: unknown column \'' + name.slice(0, 30) + '\'.');
      else if (header.indexOf(name) !== at) faults.push('Line 1: the column \'' + name + '\' is there twice.');
    });
    if (faults.length) return { entries: [], faults: faults };
    var entries = [];
    found.slice(1).forEach(function (row) {
      if (row.open) { faults.push('Line ' + row.line + ': a quote is opened and never closed, so the rest of the file cannot be read.'); return; }
      if (row.values.length > header.length) { faults.push('Line ' + row.line + ': more values than columns.'); return; }
      var entry = {};
      row.values.forEach(function (value, at) { if (plain(value)) entry[header[at]] = plain(value); });
      entries.push({ line: row.line, entry: entry });
    });
    return { entries: entries, faults: faults };
  }

  Swardbook.recordCsv = { write: write, read: read };
})();
