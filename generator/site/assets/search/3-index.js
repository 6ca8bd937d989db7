/* The pages as the library keeps them, and what it finds for an idea: forgiving in the word being typed, and kept from one letter to
   the next. */
(function () {
  "use strict";
  var search = Swardbook.search;
  var FIELDS = { title: 6, names: 4, lead: 2.5, headings: 2, sentences: 1 };
  var OTHER_WAY = 0.85, BEGINNING = 0.5, MOST_KEPT = 200;

  function words(text) { return text.split(" "); }
  function itself(term) { return term; }

  /* The stems of each sentence are kept: the sentence that answers is chosen by them. */
  function stemmed(page, field) {
    if (field === "path") { return page.path; }
    var texts = field === "names" ? search.goesBy(page) : [].concat(page[field] || []);
    if (field !== "sentences") { return search.stems(texts.join(" ")).join(" "); }
    page.stemmed = texts.map(search.stems);
    return Array.from(new Set([].concat.apply([], page.stemmed))).join(" ");
  }

  /* An index of pages: {engine, pages, called: a list of names for each page, as stems}. Fills itself in slices, so that a slow
     telephone stays awake; `done` is kept when all are in. */
  search.index = function (pages) {
    var byPath = new Map(pages.map(function (page) { return [page.path, page]; }));
    var library = new window.MiniSearch({ idField: "path", fields: Object.keys(FIELDS), extractField: stemmed, tokenize: words, processTerm: itself });
    return { engine: library, pages: byPath, kept: new Map(), called: null, done: library.addAllAsync(pages, { chunkSize: 12 }) };
  };

  /* What the library finds for a way of saying it; words that begin like the last only where that is no word itself. Kept, for the next letter typed asks again for all words but the last. */
  function found(way, last, index) {
    var key = [last].concat(way).join(" ");
    if (!index.kept.has(key)) {
      if (index.kept.size > MOST_KEPT) { index.kept.clear(); }
      var how = { boost: FIELDS, combineWith: "AND", weights: { prefix: BEGINNING, fuzzy: 0 }, bm25: { k: 1.2, b: 0.3, d: 0.3 } };
      var finds = index.engine.search(way.join(" "), how);
      index.kept.set(key, finds.length || !last ? finds : index.engine.search(way.join(" "), Object.assign({ prefix: true }, how)));
    }
    return index.kept.get(key);
  }

  /* Pages that hold one idea, path to score, the best way of saying it counting; and what says it: single stems, and phrases whose words
     say it only together (plant food is feed, and a plant is not). */
  search.holding = function (idea, index) {
    var best = new Map(), stems = new Set(), phrases = [], own = new Set();
    idea.ways.forEach(function (way, at) {
      if (way.length > 1 && at > 0) { phrases.push(way); } else { way.forEach(function (stem) { stems.add(stem); }); }
      found(way, idea.last && at === 0, index).forEach(function (find) {
        if (way.length === 1) { find.terms.forEach(function (stem) { stems.add(stem); }); }
        if (at === 0) { own.add(find.id); }
        best.set(find.id, Math.max(best.get(find.id) || 0, find.score * (at === 0 ? 1 : OTHER_WAY)));
      });
    });
    return { pages: best, stems: stems, phrases: phrases, own: own };
  };
})();
