/* One part of a page at a time: elements with data-job-part, and links with data-to. A part has a name in the page's address, and a jump
   to anything inside it leads to it; `all` stands for all of them, one below another. */
(function () {
  'use strict';
  var ALL = 'all', NAMED = /[#&]part=([a-z-]+)(?:&|$)/;

  /* moved(): after the reader has gone to another part. */
  function Parts(root, moved) {
    var parts = this, links = Swardbook.list(root.querySelectorAll('[data-to]')), boxes = Swardbook.list(root.querySelectorAll('[data-job-part]'));
    function known(name) { return name === ALL || boxes.some(function (box) { return box.dataset.jobPart === name; }); }
    this.now = this.first = boxes[0].dataset.jobPart;
    /* The theme's way past the header leads to the first heading of the list, and so into another part. */
    var skip = document.querySelector('.md-skip'), up = document.querySelector('.md-top');
    if (skip) { skip.hash = '#top'; }
    if (up) { up.classList.add('sb-parts__top'); }

    this.show = function (name) {
      if (known(name)) { parts.now = name; }
      boxes.forEach(function (box) { box.classList.toggle('sb-parts__elsewhere', parts.now !== ALL && box.dataset.jobPart !== parts.now); });
      root.classList.toggle('sb-job--all', parts.now === ALL);
      links.forEach(function (link) {
        if (link.dataset.to === parts.now) { link.setAttribute('aria-current', 'true'); } else { link.removeAttribute('aria-current'); }
      });
    };

    /* Nothing to be had in a part: no link leads there. */
    this.offer = function (name, there) {
      links.forEach(function (link) { if (link.dataset.to === name) { link.parentNode.hidden = !there; } });
    };

    /* The element that an address without particulars names, where it is in a part. */
    this.place = function (hash) {
      var id = hash.replace(/^#/, ''), found = id && id.indexOf('=') < 0 ? document.getElementById(id) : null;
      return found && root.contains(found) && found.closest('[data-job-part]') ? found : null;
    };
    /* The part that an address asks for; null for none. */
    this.asked = function (hash) {
      var place = parts.place(hash), named = NAMED.exec(hash);
      return place ? place.closest('[data-job-part]').dataset.jobPart : named && known(named[1]) ? named[1] : null;
    };

    /* To a place, in whichever part and fold it is. */
    this.go = function (place) {
      var own = place.querySelector(':scope > details');
      if (parts.now !== ALL) { parts.show(place.closest('[data-job-part]').dataset.jobPart); }
      if (own) { own.open = true; }
      for (var fold = place.closest('details'); fold; fold = fold.parentNode.closest('details')) { fold.open = true; }
      place.scrollIntoView();
    };

    /* The part begins under the list of parts. A telephone has no room for the page's title above it a second time. */
    function top() {
      var above = root.getBoundingClientRect().top - parseFloat(window.getComputedStyle(root.querySelector('.sb-parts')).top);
      if (above < 0 || window.matchMedia('(max-width: 44.99em)').matches) { window.scrollBy(0, above); }
    }

    root.addEventListener('click', function (event) {
      var link = event.target.closest('[data-to]');
      if (!link || event.ctrlKey || event.metaKey || event.shiftKey) { return; }
      event.preventDefault();
      parts.show(link.dataset.to);
      moved();
      top();
    });
  }

  Swardbook.JobParts = Parts;
})();
