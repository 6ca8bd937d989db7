/* How far what was asked is what a page is called, or what one of its sentences says. A text is a list of stems; what was asked is a
   list of ideas, each with its weight. */
(function () {
  "use strict";
  var search = Swardbook.search;
  var LITTLE = 0.35, WEAK = 0.5, OTHER_WAY = 0.85;

  /* The ideas looked up by stem: {of(text): a map from each stem of it that says an idea to the idea's place in what was asked}. */
  search.meaning = function (held) {
    var single = new Map(), phrases = [];
    held.forEach(function (each, at) {
      each.stems.forEach(function (stem) { if (!single.has(stem)) { single.set(stem, at); } });
      each.phrases.forEach(function (phrase) { phrases.push({ stems: phrase, at: at }); });
    });
    function of(text) {
      var said = new Map();
      text.forEach(function (stem) { if (single.has(stem)) { said.set(stem, single.get(stem)); } });
      phrases.forEach(function (phrase) {
        if (phrase.stems.every(function (stem) { return text.indexOf(stem) >= 0; })) {
          phrase.stems.forEach(function (stem) { if (!said.has(stem)) { said.set(stem, phrase.at); } });
        }
      });
      return said;
    }
    return { of: of, single: single, phrases: phrases };
  };

  function names(of, spoken) {
    return [of.title].concat(of.names || []).map(function (name) {
      var said = search.split(name).filter(function (word) { return !spoken.little.has(word); }).map(search.stem);
      var telling = said.filter(function (stem) { return !spoken.weak.has(stem); });
      return telling.length ? telling : said;
    }).filter(function (name) { return name.length; });
  }

  /* A text with its little words: too much sand is a problem, how much sand a sum. */
  search.verbatim = function (text) { return search.stems(text).join(" "); };

  /* The same as stems, each once and with its weight, and the whole weight of it. */
  search.wording = function (text, spoken) {
    var whole = 0, words = new Map();
    search.split(text).forEach(function (word) {
      var stem = search.stem(word);
      if (words.has(stem)) { return; }
      words.set(stem, spoken.little.has(word) ? LITTLE : spoken.weak.has(stem) ? WEAK : 1);
      whole += words.get(stem);
    });
    return { words: words, whole: whole };
  };

  /* How far two wordings are the same, from 0 to 1: what they share of what either says. meaning: what else means the same. */
  search.alike = function (asked, name, meaning) {
    var both = 0, ideas = new Set();
    name.words.forEach(function (weight, stem) {
      var idea = meaning.single.get(stem);
      if (asked.words.has(stem)) { both += weight; }
      else if (idea !== undefined && !ideas.has(idea)) { both += weight * OTHER_WAY; }
      if (idea !== undefined) { ideas.add(idea); }
    });
    return both / (asked.whole + name.whole - both);
  };

  /* The names each page goes by, as lists of stems without little words; of a page that joins others, one list of names a part. */
  search.nameAll = function (index, spoken) {
    index.called = new Map();
    index.verbatim = new Map();
    index.wordings = new Map();
    index.pages.forEach(function (page, path) {
      var about = (page.about || []).map(function (path) { return index.pages.get(path); }).filter(Boolean);
      index.called.set(path, (about.length ? about : [page]).map(function (each) { return names(each, spoken); }));
      index.verbatim.set(path, new Set([page.title].concat(page.names || []).map(search.verbatim)));
      index.wordings.set(path, [page.title].concat(page.names || []).map(function (name) { return search.wording(name, spoken); }));
    });
  };

  function distinct(said) { return new Set(said.values()); }

  /* Which of the ideas are just what a page is called, {ats, wholly: one name alone holds all of them, like: how near its nearest name comes
     to what was asked, from 0 to 1}; no ats where a part goes unnamed. One idea does not name two parts: blue couch is a grass, and of
     Queensland, without asking for Brisbane. */
  search.calledThat = function (parts, meaning, weights, total) {
    var used = new Set(), wholly = false, like = 0, title = 0;
    var every = parts.map(function (list) {
      var before = used.size, mine = new Set();
      list.forEach(function (name, at) {
        var said = meaning.of(name);
        if (!said.size) { return; }
        var own = distinct(said), asked = 0;
        own.forEach(function (at) { asked += weights[at]; });
        var uttered = name.filter(function (stem) { return said.has(stem); }).length / name.length;
        like = Math.max(like, uttered * asked / total);
        if (at === 0) { title = Math.max(title, uttered * asked / total); }
        if (uttered < 1) { return; }
        own.forEach(function (at) { mine.add(at); });
        if (own.size === weights.length) { wholly = true; }
      });
      mine.forEach(function (at) { used.add(at); });
      return used.size > before;
    }).every(Boolean);
    return every ? { ats: Array.from(used), wholly: wholly, like: like, title: title } : { ats: [], wholly: false, like: parts.length > 1 ? 0 : like, title: parts.length > 1 ? 0 : title };
  };

  /* The most of what was asked that one sentence of a page says, from 0 to 1. */
  search.saidAtOnce = function (page, meaning, weights, total) {
    var most = 0;
    [search.stems(page.lead || "")].concat(page.stemmed || []).forEach(function (sentence) {
      var asked = 0;
      distinct(meaning.of(sentence)).forEach(function (at) { asked += weights[at]; });
      most = Math.max(most, asked / total);
    });
    return most;
  };
})();
