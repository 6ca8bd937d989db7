/* Which pages answer. The library finds pages by word, forgiving a slip of the pen; here its finds are weighed: how much of what was
   asked a page covers, whether the page is called just that, and what kind of page such a question wants. */
(function () {
  "use strict";
  var search = Swardbook.search;
  var FIELDS = { title: 6, names: 4, lead: 2.5, headings: 2, sentences: 1 };
  var OTHER_WAY = 0.85, BEGINNING = 0.5, WEAK = 0.25, CALLED = 5, WHOLLY = 1.5, VERBATIM = 2, MOST_KEPT = 200, FAINT = 0.005;

  function words(text) { return text.split(" "); }
  function itself(term) { return term; }

  /* The stems of each sentence are kept: the sentence that answers is chosen by them. */
  function stemmed(page, field) {
    if (field === "path") { return page.path; }
    var texts = [].concat(page[field] || []);
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

  /* The names a page goes by, as lists of stems without little words; of a page that joins others, one list of names a part. */
  function parts(page, index, spoken) {
    function names(of) {
      return [of.title].concat(of.names || []).map(function (name) {
        var said = search.split(name).filter(function (word) { return !spoken.little.has(word); }).map(search.stem);
        var telling = said.filter(function (stem) { return !spoken.weak.has(stem); });
        return telling.length ? telling : said;
      }).filter(function (name) { return name.length; });
    }
    var about = (page.about || []).map(function (path) { return index.pages.get(path); }).filter(Boolean);
    return about.length ? about.map(names) : [names(page)];
  }

  /* A text with its little words: too much sand is a problem, how much sand a sum. */
  function verbatim(text) { return search.stems(text).join(" "); }

  search.nameAll = function (index, spoken) {
    index.called = new Map();
    index.verbatim = new Map();
    index.pages.forEach(function (page, path) {
      index.called.set(path, parts(page, index, spoken));
      index.verbatim.set(path, new Set([page.title].concat(page.names || []).map(verbatim)));
    });
  };

  /* What the library finds for a way of saying it. Kept, for the next letter typed asks again for all words but the last. */
  function found(way, last, index) {
    var key = [last].concat(way).join(" ");
    if (!index.kept.has(key)) {
      if (index.kept.size > MOST_KEPT) { index.kept.clear(); }
      index.kept.set(key, index.engine.search(way.join(" "), {
        boost: FIELDS, combineWith: "AND", prefix: last, weights: { prefix: BEGINNING, fuzzy: 0 }, bm25: { k: 1.2, b: 0.3, d: 0.3 }
      }));
    }
    return index.kept.get(key);
  }

  /* Pages that hold one idea: path to {score, stems that matched}, and every stem that would do for it. The best way of saying it counts. */
  function holding(idea, index) {
    var best = new Map(), stems = new Set();
    idea.ways.forEach(function (way, at) {
      var finds = found(way, idea.last && at === 0, index);
      way.forEach(function (stem) { stems.add(stem); });
      finds.forEach(function (find) {
        find.terms.forEach(function (stem) { stems.add(stem); });
        var score = find.score * (at === 0 ? 1 : OTHER_WAY), kept = best.get(find.id);
        if (!kept) { best.set(find.id, { score: score, stems: new Set(find.terms) }); return; }
        kept.score = Math.max(kept.score, score);
        find.terms.forEach(function (stem) { kept.stems.add(stem); });
      });
    });
    return { pages: best, stems: stems };
  }

  /* How rare an idea is: what few pages hold tells more. */
  function weight(idea, held, all) {
    return (idea.weak ? WEAK : 1) * Math.log(1 + all / (1 + held.pages.size));
  }

  /* Which of the ideas are just what a page is called, {ats, wholly: one name alone holds all of them}; none where a part goes unnamed.
     One idea does not name two parts: blue couch is a grass, and of Queensland, without asking for Brisbane. */
  function calledThat(names, meaning, ideas) {
    var used = new Set(), wholly = false;
    var every = names.every(function (list) {
      var before = used.size, mine = new Set();
      list.forEach(function (name) {
        if (name.every(function (stem) { return meaning.has(stem); })) {
          var own = new Set(name.map(function (stem) { return meaning.get(stem); }));
          own.forEach(function (at) { mine.add(at); });
          if (own.size === ideas) { wholly = true; }
        }
      });
      mine.forEach(function (at) { used.add(at); });
      return used.size > before;
    });
    return every ? { ats: Array.from(used), wholly: wholly } : { ats: [], wholly: false };
  }

  function sum(ats, weights) { return ats.reduce(function (total, at) { return total + weights[at]; }, 0); }

  /* What the way of asking is after: a factor for each kind of page. */
  function wanted(text, spoken) {
    var kinds = {};
    spoken.meant.forEach(function (each) {
      if (!each.ask.test(text)) { return; }
      Object.keys(each.kinds).forEach(function (kind) { kinds[kind] = (kinds[kind] || 1) * each.kinds[kind]; });
    });
    return kinds;
  }

  /* Pages for what was asked, best first: [{page, score, stems: that matched, each with its idea and weight, called: the share that names it}]. */
  search.rank = function (text, index, spoken) {
    var ideas = search.ideas(text, spoken, index.spelling);
    var held = ideas.map(function (idea) { return holding(idea, index); });
    var weights = ideas.map(function (idea, at) { return weight(idea, held[at], index.pages.size); });
    var total = weights.reduce(function (whole, each) { return whole + each; }, 0), kinds = wanted(text.toLowerCase(), spoken), ranked = [], meaning = new Map(), asked = verbatim(text);
    held.forEach(function (each, at) { each.stems.forEach(function (stem) { if (!meaning.has(stem)) { meaning.set(stem, at); } }); });
    index.pages.forEach(function (page, path) {
      var score = 0, covered = 0, stems = new Map();
      var called = calledThat(index.called.get(path), meaning, ideas.length), just = sum(called.ats, weights) / total;
      held.forEach(function (each, at) {
        var find = each.pages.get(path);
        if (find || called.ats.indexOf(at) >= 0) { covered += weights[at]; }
        if (!find) { return; }
        score += find.score * (ideas[at].weak ? WEAK : 1);
        find.stems.forEach(function (stem) {
          var own = ideas[at].ways[0].indexOf(stem) >= 0;
          if (own || !stems.has(stem)) { stems.set(stem, { idea: at, own: own, weight: weights[at] * (own ? 1 : OTHER_WAY) }); }
        });
      });
      if (!covered) { return; }
      var share = covered / total;
      ranked.push({
        page: page, stems: stems, called: just,
        score: score * share * share * (1 + CALLED * just * just * index.called.get(path).length) * (called.wholly ? WHOLLY : 1) * (index.verbatim.get(path).has(asked) ? VERBATIM : 1) * (page.boost || 1) * ((spoken.kinds[page.kind] || {}).weight || 1) * (kinds[page.kind] || 1)
      });
    });
    ranked.sort(function (one, other) { return other.score - one.score; });
    return ranked.filter(function (each) { return each.score > FAINT * ranked[0].score; });
  };
})();
