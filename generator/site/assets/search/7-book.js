/* The book arrives: it is indexed, and from then on can be asked. */
(function () {
  "use strict";
  var search = Swardbook.search;

  /* Called by the script that holds the words of the book. Afterwards `search.ask(text)` gives [{page, stems, score}], best first; `search.ready` says when. */
  search.read = function (book) {
    var words = search.learn(book), index = search.index(book.pages);
    search.kinds = book.kinds;
    search.ready = index.done.then(function () {
      var speller = search.speller(book.pages);
      index.spelling = speller.guess;
      return speller.done;
    }).then(function () {
      search.nameAll(index, words);
      search.ask = function (text) { return search.rank(text, index, words); };
    });
  };
})();
