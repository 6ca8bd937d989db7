/* Says beside a reader's work, at once, that it is not kept, and what of earlier work could not be read: what happened, what can be done
   about it, and the work as a file. */
(function () {
  'use strict';
  var WHY = {
    full: 'There is no room left on this device to keep this.',
    blocked: 'This browser keeps nothing for this page.',
    stuck: 'What was already kept here could not be read, so nothing is written over it.'
  };

  var add = Swardbook.add;

  function button(parent, words, act) { parent.appendChild(Swardbook.button(words, act)); }

  function box(className) {
    var made = Swardbook.element('div', 'sb-kept ' + className);
    made.setAttribute('role', 'status');
    return made;
  }

  /* Fills a box once for the same state of things, so that nothing is read out twice and no button goes while a finger is on it. */
  function fill(element, state, write) {
    if (element.sbState === state) { return; }
    var within = element.contains(document.activeElement);
    element.sbState = state;
    element.textContent = '';
    write();
    if (within && element.querySelector('button')) { element.querySelector('button').focus(); }
  }

  /* root: the element that holds the work. name: of the collection. file: gives {name, kind, text} of all of it, as it stands on the page.
     frame: what the reader may be looking at meanwhile; root itself without it.
     Returns {say(words, buttons), end()}: say puts words with [[label, act]] where the reader is; '' takes them away. */
  Swardbook.keptNotice = function (root, name, file, frame) {
    var rows = Swardbook.kept(name), deleted = [], said = ['', []];
    var left = box('sb-kept--aside'), now = box('sb-kept--now');
    root.insertBefore(left, root.firstChild);
    (frame || root).appendChild(now);

    function save() {
      var made = file();
      Swardbook.download(made.name, made.kind, made.text);
    }

    function showNow() {
      var reason = rows.reason(), work = rows.all().length > 0 || rows.unkept() > 0;
      fill(now, [reason, work, said[0]].join(), function () {
        if (said[0]) {
          add(now, 'p', '', said[0]);
          var ways = add(now, 'p', 'sb-kept__ways');
          said[1].forEach(function (each) { button(ways, each[0], each[1]); });
        }
        if (!reason) { return; }
        add(now, 'p', '', WHY[reason] + ' What you wrote stays on this page until you close it.');
        if (!work) { return; }
        var offered = add(now, 'p', 'sb-kept__ways');
        button(offered, 'Save it as a file', save);
        button(offered, 'Try again', function () {
          rows.flush();
          if (!rows.unkept()) { say('It is kept now.', [['Close', function () { say('', []); }]]); }
        });
      });
      document.documentElement.classList.toggle('sb-kept-open', Boolean(document.querySelector('.sb-kept--now:not(:empty)')));
    }

    function showAside() {
      var found = rows.aside();
      fill(left, found.map(function (each) { return each.key; }).concat(['|'], deleted.map(function (each) { return each.key; })).join(), function () {
        if (found.length + deleted.length) { add(left, 'p', '', 'Something that was kept here is damaged, or is from another edition of the book, and could not be read. It is set aside as it was, and the rest is here.'); }
        found.forEach(function (each, number) { asideRow(each, found.length > 1 ? ' ' + (number + 1) : ''); });
        deleted.forEach(function (each) {
          var ways = add(left, 'p', 'sb-kept__ways', 'Deleted.');
          button(ways, 'Bring it back', function () {
            deleted = deleted.filter(function (other) { return other !== each; });
            rows.bringBack(each);
          });
        });
      });
    }

    function asideRow(each, number) {
      var ways = add(left, 'p', 'sb-kept__ways');
      button(ways, 'Save what was set aside' + number, function () { Swardbook.download('set-aside-' + name + '.txt', 'text/plain', each.text); });
      if (each.later) { return; }
      button(ways, 'Delete it' + number, function () {
        deleted.push(each);
        rows.deleteAside(each);
      });
    }

    function show() {
      if (!document.contains(now)) { return; }
      showAside();
      showNow();
    }

    function say(words, buttons) {
      said = [words, buttons || []];
      showNow();
    }

    var leave = Swardbook.device.follow(show);
    show();
    return { say: say, end: leave };
  };
})();
