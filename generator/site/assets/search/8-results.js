/* What was found, as a list of links: title, kind of page, and the sentence that answers with the words in it marked. */
(function () {
  "use strict";
  var search = Swardbook.search;
  var MOST = 10;

  function marked(tag, className, text, stems) {
    var made = Swardbook.element(tag, className);
    search.marked(text, stems).forEach(function (piece) {
      made.append(piece.marked ? Swardbook.element("mark", null, piece.text) : piece.text);
    });
    return made;
  }

  function item(find, address) {
    var made = Swardbook.element("li", "md-search-result__item"), link = Swardbook.element("a", "md-search-result__link sb-search__link");
    var head = Swardbook.element("span", "sb-search__head");
    var also = search.alsoCalled(find.page, find.stems);
    link.href = address(find.page.path);
    head.append(marked("span", "sb-search__title", Swardbook.told(find.page.title), find.stems));
    if (search.kinds[find.page.kind]) { head.append(" ", Swardbook.element("span", "sb-search__kind", search.kinds[find.page.kind].say)); }
    link.append(head);
    if (also) {
      var line = Swardbook.element("span", "sb-search__also", "also called ");
      line.append(Swardbook.asWritten(marked("span", null, also, find.stems))); /* As it was asked for. */
      link.append(" ", line);
    }
    link.append(" ", marked("span", "sb-search__answer", Swardbook.told(search.answer(find)), find.stems));
    made.append(link);
    return made;
  }

  function count(finds, text) {
    if (!finds.length) { return "No results for “" + text + "”. Try fewer words, or the name of the grass or the job."; }
    if (finds.length > MOST) { return "The best " + MOST + " of " + finds.length + " results"; }
    return finds.length === 1 ? "1 result" : finds.length + " results";
  }

  /* Shows what `text` finds in `list`, and how much that is in `status`. address: from a page's path to where it stands from here. */
  search.show = function (text, list, status, address) {
    var finds = search.ask(text);
    list.replaceChildren.apply(list, finds.slice(0, MOST).map(function (find) { return item(find, address); }));
    Swardbook.asWritten(status).textContent = count(finds, text);
  };
})();
