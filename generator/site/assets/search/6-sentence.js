/* The sentence of a page that answers: the one that holds most of what was asked, the page's own opening where nothing says more. A page
   that is called what was asked answers with its opening too, unless it joins others: a guide is asked about something in it. */
(function () {
  "use strict";
  var search = Swardbook.search;
  var OPENING = 1.3, LONGEST = 45, IN_TITLE = 0.3, JUST_THAT = 0.7, FIRST_WORD = 1.2;

  /* How much of what was asked some stems hold: each idea once, by the stem that says it best. */
  function holds(said, stems) {
    var best = new Map();
    stems.forEach(function (of, stem) {
      if (said.indexOf(stem) >= 0) { best.set(of.idea, Math.max(best.get(of.idea) || 0, of.weight)); }
    });
    var total = 0;
    best.forEach(function (weight) { total += weight; });
    return (stems.get(said[0]) || {}).own ? total * FIRST_WORD : total;
  }

  /* What the title says already, a sentence need not say again: one that says no more than the title answers nothing. */
  search.answer = function (find) {
    var page = find.page;
    if (!page.about && find.called >= JUST_THAT) { return page.lead; }
    var title = new Set(search.stems(page.title)), stems = new Map(), telling = new Set();
    find.stems.forEach(function (of, stem) {
      if (!title.has(stem)) { telling.add(stem); }
      stems.set(stem, { idea: of.idea, own: of.own, weight: of.weight * (title.has(stem) ? IN_TITLE : 1) });
    });
    var best = page.lead, most = holds(search.stems(page.lead), stems) * OPENING;
    (page.sentences || []).forEach(function (sentence, at) {
      var said = page.stemmed[at], held = said.length > 3 && said.length < LONGEST ? holds(said, stems) : 0;
      if (held > most && /[.!?]$/.test(sentence) && said.some(function (stem) { return telling.has(stem); })) {
        best = sentence;
        most = held;
      }
    });
    return best;
  };

  /* A text in pieces: [{text, marked}], marked where a word has a stem that matched. */
  search.marked = function (text, stems) {
    var pieces = [], at = 0, word = /[\p{L}\p{N}]+(?:['’.][\p{L}\p{N}]+)*/gu, found;
    while ((found = word.exec(text))) {
      if (!search.stems(found[0]).some(function (stem) { return stems.has(stem); })) { continue; }
      if (found.index > at) { pieces.push({ text: text.slice(at, found.index), marked: false }); }
      pieces.push({ text: found[0], marked: true });
      at = found.index + found[0].length;
    }
    if (at < text.length) { pieces.push({ text: text.slice(at), marked: false }); }
    return pieces;
  };

  /* The other name of a page that was asked for, if it is not in the title already: 'also called dethatch'. */
  search.alsoCalled = function (page, stems) {
    var title = new Set(search.stems(page.title));
    return (page.names || []).find(function (name) {
      return search.stems(name).every(function (stem) { return stems.has(stem); }) && !search.stems(name).every(function (stem) { return title.has(stem); });
    }) || null;
  };
})();
