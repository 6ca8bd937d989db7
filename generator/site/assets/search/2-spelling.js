/* The words of the book by their letters, to guess what a word was meant to be that the book does not use. */
(function () {
  "use strict";
  var search = Swardbook.search;
  var MOST_GUESSES = 3, SHORTEST = 4, LONG = 6;

  /* How often each word stands in some fields of all pages. */
  function counted(pages, fields) {
    var counts = new Map();
    pages.forEach(function (page) {
      var said = [].concat.apply([], fields.map(function (field) { return page[field] || []; })).join(" ");
      search.split(said).forEach(function (word) { counts.set(word, (counts.get(word) || 0) + 1); });
    });
    return counts;
  }

  /* Gives {guess, done}: guess(word, typing) is the nearest words of the book, the likeliest first, and none for a word that its pages
     say. A word that stands only among other names may be a misspelling on purpose, so it is guessed at too. */
  search.speller = function (pages) {
    var counts = counted(pages, ["title", "lead", "headings", "sentences"]), stems = new Set(), kept = new Map();
    var library = new window.MiniSearch({
      idField: "word", fields: ["word"], tokenize: function (text) { return [text]; }, processTerm: function (term) { return term; }
    });
    var all = Array.from(new Set(Array.from(counts.keys()).concat(Array.from(counted(pages, ["names", "heard"]).keys()))));
    counts.forEach(function (count, word) { stems.add(search.stem(word)); });
    var done = library.addAllAsync(all.filter(function (word) { return word.length >= SHORTEST; }).map(function (word) { return { word: word }; }), { chunkSize: 400 });

    function guesses(word, typing) {
      if (counts.has(word) || stems.has(search.stem(word)) || word.length < SHORTEST || /[0-9]/.test(word)) { return []; }
      if (typing && all.some(function (known) { return known.indexOf(word) === 0; })) { return []; }
      var near = library.search(word, { fuzzy: word.length >= LONG ? 2 : 1 }).filter(function (each) { return each.id !== word; });
      var best = near.length ? near[0].score : 0;
      return near.filter(function (each) { return each.score > best * 0.98; }).map(function (each) { return each.id; })
        .sort(function (one, other) { return (counts.get(other) || 0) - (counts.get(one) || 0); }).slice(0, MOST_GUESSES);
    }

    function guess(word, typing) {
      var key = word + (typing ? "…" : "");
      if (!kept.has(key)) { kept.set(key, guesses(word, typing)); }
      return kept.get(key);
    }
    return { guess: guess, done: done };
  };
})();
