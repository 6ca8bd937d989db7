/* Whole-day events as an iCalendar file (RFC 5545), for the calendar on a phone. Twin: calendar file. */
(function () {
  'use strict';
  var K = Swardbook.contract.calendar;
  var LONGEST_LINE = 75; /* octets, the line break not counted: RFC 5545, 3.1 */

  function octets(character) {
    var code = character.codePointAt(0);
    return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }

  /* A long line goes on after a line break and a space; no character is cut in two. */
  function folded(line) {
    var out = '', length = 0;
    Array.from(line).forEach(function (character) {
      var size = octets(character);
      if (length + size > LONGEST_LINE) { out += '\r\n '; length = 1; }
      out += character;
      length += size;
    });
    return out + '\r\n';
  }

  function escaped(text) {
    return text.replace(/\\/g, '\\\\').replace(/;/g, '\\;').replace(/,/g, '\\,').replace(/\r\n|\r|\n/g, '\\n').replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '');
  }

  function basic(day) { return Swardbook.dates.iso(day).replace(/-/g, ''); }

  /* entries: {id, title, text, first, last, address}; first, last: inclusive, days since 1970. domain makes the ids the book's own;
     made: a Date; each wakes its reader on its first morning; of two files with the same ids the later one counts (SEQUENCE), so that what has moved moves. Returns the file's text. */
  function calendarFile(name, entries, domain, made) {
    var stamp = made.toISOString().slice(0, 19).replace(/[-:]/g, '') + 'Z';
    var lines = ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:' + K.product, 'CALSCALE:GREGORIAN', 'X-WR-CALNAME:' + escaped(name)];
    var sequence = Math.max(0, Math.floor(made.getTime() / 60000) - K.first_minute);
    entries.forEach(function (entry) {
      lines.push(
        'BEGIN:VEVENT', 'UID:' + escaped(entry.id + '@' + domain), 'DTSTAMP:' + stamp, 'LAST-MODIFIED:' + stamp, 'SEQUENCE:' + sequence, 'DTSTART;VALUE=DATE:' + basic(entry.first),
        'DTEND;VALUE=DATE:' + basic(entry.last + 1), 'SUMMARY:' + escaped(entry.title), 'DESCRIPTION:' + escaped(entry.text), 'TRANSP:TRANSPARENT'
      );
      if (entry.address) { lines.push('URL:' + entry.address); }
      lines.push('BEGIN:VALARM', 'ACTION:DISPLAY', 'DESCRIPTION:' + escaped(entry.title), 'TRIGGER:PT' + K.alarm_hour + 'H', 'END:VALARM', 'END:VEVENT');
    });
    lines.push('END:VCALENDAR');
    return lines.map(folded).join('');
  }

  Swardbook.calendarFile = calendarFile;
})();
