/* The bar under the header: which lawn every page goes by, and the pages that are about it. */
(function () {
  'use strict';
  var MORE = 'more';

  Swardbook.component('lawn-bar', function (root) {
    var parts = Swardbook.parts(root), lawns = Swardbook.lawns, page = root.getAttribute('data-lawns'), top = page.replace(/lawns\.html$/, '');

    function option(value, words) {
      var made = Swardbook.add(parts.lawns, 'option', '', words);
      made.value = value;
      return made;
    }

    /* A list that stays the same is left alone, for somebody may have it open. */
    function options(all) {
      var same = JSON.stringify(all.map(function (each) { return [each.id, each.code]; }));
      if (parts.lawns.sbOptions === same) { return; }
      parts.lawns.sbOptions = same;
      parts.lawns.textContent = '';
      option('', 'none chosen');
      all.forEach(function (each) { option(each.id, each.code); });
      option(MORE, 'All lawns, or a new one …');
    }

    /* A page that the book has only for some grasses or places is offered for those. */
    function aim(lawn) {
      Swardbook.each(parts.links, '[data-lawn-page]', function (link) {
        var of = link.getAttribute('data-of');
        link.parentNode.hidden = Boolean(of) && link.getAttribute('data-only').split(' ').indexOf(lawn[of]) < 0;
        link.href = top + Swardbook.filled(link.getAttribute('data-lawn-page'), lawn);
      });
    }

    function show() {
      var all = lawns.all(), lawn = lawns.chosen();
      parts.none.hidden = all.length > 0;
      parts.choice.hidden = !all.length;
      options(all);
      parts.lawns.value = lawn ? lawn.id : '';
      parts.ways.hidden = !lawn;
      if (lawn) { aim(lawn); } else { parts.ways.open = false; }
    }

    parts.lawns.addEventListener('change', function () {
      if (parts.lawns.value === MORE) {
        show();
        window.location.href = page;
      } else { lawns.choose(parts.lawns.value); }
    });
    document.addEventListener('click', function (event) { if (!root.contains(event.target)) { parts.ways.open = false; } });
    root.addEventListener('keydown', function (event) {
      if (event.key !== 'Escape' || !parts.ways.open) { return; }
      parts.ways.open = false;
      parts.ways.querySelector('summary').focus();
    });
    lawns.follow(show);
    show();
  });
})();
