/* What is said of a year that notes move; the sentences are those of the command line (words/seen_sentences.py). Twin: seen. */
(function () {
  'use strict';

  function days(count) { return count + (count === 1 ? ' day' : ' days'); }
  function whole(number) { return Swardbook.formula.round(number); }
  function degrees(celsius) { return Swardbook.readerUnits.us() ? whole(celsius * 9 / 5 + 32) + ' °F' : whole(celsius * 10) / 10 + ' °C'; }

  /* '20 September 2026'. */
  function dated(iso) { return Swardbook.dates.dayWords(Swardbook.dates.dayOfYear(iso)) + ' ' + +iso.slice(0, 4); }

  /* [what it says in short, or '', and why]. */
  function told(each, reading) {
    var W = Swardbook.seenRules.words, S = W.sentences, fill = Swardbook.filled, on = dated(each.on);
    if (each.days === null) { return ['', fill(S[each.idle], { on: on, note: W.notes[each.of] })]; }
    var late = whole(Math.abs(each.days)), usualDay = Swardbook.dates.dayWords(each.usual), most = each.isMost ? ' ' + fill(S.most, { most: days(Swardbook.seenRules.most) }) : '';
    if (each.of === 'last_frost') { return [S['frost-late'], fill(S['frost-why'], { on: on, days: days(each.usualDays), usual_day: usualDay }) + most]; }
    var first = fill(S[!late ? 'usual' : each.days > 0 ? 'late' : 'early'], { half: W.halves[each.half], days: days(late), source: W.sources[each.of] });
    if (each.of === 'green_up') { return [first, fill(S['green-up-why'], { on: on, usual_day: usualDay }) + most]; }
    return [first, fill(S['soil-why'], { reading: reading, on: on, usual: degrees(each.usualC), usual_day: usualDay }) + most];
  }

  /* 'opens about 14 October instead of 5 October; is best about ...'. */
  function movedWords(window) {
    var W = Swardbook.seenRules.words;
    return W.edges.map(function (edge, at) {
      if (window.usual[at] === window.moved[at]) { return ''; }
      return Swardbook.filled(W.sentences[edge], { moved: Swardbook.dates.dayWords(window.moved[at]), usual: Swardbook.dates.dayWords(window.usual[at]) });
    }).filter(Boolean).join('; ');
  }

  Swardbook.seen = Object.assign(Swardbook.seen || {}, {
    dated: dated,
    /* Whether a day lies in one of the windows as they are moved. */
    dayWords: function (windows, iso) {
      var day = Swardbook.dates.dayOfYear(iso), S = Swardbook.seenRules.words.sentences;
      return windows.some(function (each) { return (day - each.moved[0] + 365) % 365 <= (each.moved[2] - each.moved[0] + 365) % 365; }) ? S['day-in'] : S['day-out'];
    },
    /* {short: sentences that stand in the open, windows: [{kind, label, words}], why: sentences one tap away, how}. */
    lines: function (year, notes) {
      var W = Swardbook.seenRules.words, all = year.told.map(function (each) { return told(each, notes.soil); });
      var says = year.told.some(function (each) { return each.days !== null; });
      return {
        short: all.map(function (pair) { return pair[0]; }).filter(Boolean), why: all.map(function (pair) { return pair[1]; }),
        windows: year.windows.map(function (each) { return { kind: each.kind, label: W.labels[each.kind], words: movedWords(each) + '.' }; }),
        how: says ? W.sentences[year.windows.length ? 'how' : 'nothing'] : ''
      };
    }
  });
})();
