/* The namespace of every script of the book, and what they all lean on. Scripts are classic: a page opened from a folder must run them.
   This one is the first of every page, after the contract with Python (generator/site/frame/contract.py). */
var Swardbook = window.Swardbook || {};

/* Runs `start(root)` on every element with data-component="name", or that `selector` finds, once all scripts of the page are read, so
   that no component minds the order of the files. What fails leaves its page as it was. */
Swardbook.component = function (name, start, selector) {
  function startAll() {
    Swardbook.each(document, selector || '[data-component~="' + name + '"]', function (root) {
      try {
        start(root);
      } catch (error) {
        console.error('swardbook: ' + name + ' did not start: ' + error.message);
      }
    });
  }
  if (document.readyState === 'complete') startAll();
  else document.addEventListener('DOMContentLoaded', startAll);
};

/* The script at an address, once: a promise that fails with the address where it does not come. A page opened from a folder may load
   scripts, but not fetch data. */
Swardbook.load = (function () {
  var loads = {};
  return function (address) {
    loads[address] = loads[address] || new Promise(function (done, failed) {
      var script = document.createElement('script');
      script.async = false; /* Several are run in the order in which they were asked for. */
      script.src = address;
      script.onload = function () { done(address); };
      script.onerror = function () { delete loads[address]; script.remove(); failed(new Error(address)); };
      document.head.appendChild(script);
    });
    return loads[address];
  };
})();

/* Why something cannot be: a code for scripts, a sentence for people. */
Swardbook.Problem = function (code, sentence) {
  this.name = 'Problem';
  this.code = code;
  this.sentence = this.message = sentence;
};
Swardbook.Problem.prototype = Object.create(Error.prototype);
Swardbook.Problem.prototype.constructor = Swardbook.Problem;

/* The sentence of a problem that was caught; any other error is a slip of ours, and goes on. */
Swardbook.sentenceOf = function (problem) {
  if (!problem.sentence) throw problem;
  return problem.sentence;
};

Swardbook.own = function (object, name) { return Boolean(object) && Object.prototype.hasOwnProperty.call(object, name); };

/* A template of the contract with its places filled: filled('{count} packs', {count: 4}). */
Swardbook.filled = function (template, values) {
  return template.replace(/\{([a-z_]+)\}/g, function (place, name) {
    if (!Swardbook.own(values, name)) throw new Error('nothing fills ' + place);
    return values[name];
  });
};

Swardbook.capital = function (text) { return text.charAt(0).toUpperCase() + text.slice(1); };
Swardbook.small = function (text) { return text.charAt(0).toLowerCase() + text.slice(1); };

Swardbook.list = function (found) { return Array.prototype.slice.call(found); };
Swardbook.each = function (root, selector, act) { Swardbook.list(root.querySelectorAll(selector)).forEach(act); };

/* Every part of a page that has a name, by that name. */
Swardbook.parts = function (root) {
  var found = {};
  Swardbook.each(root, '[data-part]', function (part) { found[part.getAttribute('data-part')] = part; });
  return found;
};

/* A new element with a class and text; text is never read as markup. */
Swardbook.element = function (tag, className, text) {
  var made = document.createElement(tag);
  if (className) made.className = className;
  if (text !== undefined && text !== null) made.textContent = text;
  return made;
};

/* The same, put last into `parent`. */
Swardbook.add = function (parent, tag, className, text) { return parent.appendChild(Swardbook.element(tag, className, text)); };

/* What a page that is worked out anew at every tap says and hides. Only what differs is written: a browser lays out again all that is. */
Swardbook.say = function (element, text) { if (element.textContent !== text) element.textContent = text; };
Swardbook.hide = function (element, hidden) { if (element.hidden !== Boolean(hidden)) element.hidden = hidden; };
/* The same for more than a text, piece by piece; what can be pressed is always made anew, for it acts on what is now. write: fills an empty
   element. */
Swardbook.filledBy = function (element, write) {
  var made = element.cloneNode(false), there = element.childNodes;
  write(made);
  var wanted = Swardbook.list(made.childNodes);
  wanted.forEach(function (node, at) {
    var old = there[at];
    if (!old) element.appendChild(node);
    else if (old.nodeType === 3 && node.nodeType === 3) { if (old.data !== node.data) old.data = node.data; }
    else if (!node.isEqualNode(old) || node.querySelector && (node.tagName === 'BUTTON' || node.querySelector('button'))) element.replaceChild(node, old);
  });
  while (there.length > wanted.length) element.removeChild(element.lastChild);
  return element;
};

/* A quiet button; `act` may come later. */
Swardbook.button = function (words, act) {
  var made = Swardbook.element('button', 'sb-button sb-button--quiet', words);
  made.type = 'button';
  if (act) made.addEventListener('click', act);
  return made;
};

/* Whether a list to choose from has a value, which is chosen then. */
Swardbook.choose = function (select, value) {
  var there = Swardbook.list(select.options).some(function (option) { return option.value === value; });
  if (there) select.value = value;
  return there;
};

/* Marks a field, or not, as one that holds what cannot be. */
Swardbook.markInvalid = function (input, wrong) {
  if (wrong) input.setAttribute('aria-invalid', 'true');
  else input.removeAttribute('aria-invalid');
};

/* Copies a text. byHand: where the browser gives no clipboard, or refuses it, the text is to be shown or marked. */
Swardbook.copy = function (text, done, byHand) {
  if (!navigator.clipboard) byHand();
  else navigator.clipboard.writeText(text).then(done, byHand);
};

/* Says to the rest of the page that something was chosen, e.g. 'swardbook:units' with {value: 'us'}. */
Swardbook.tell = function (name, detail) {
  document.dispatchEvent(new CustomEvent('swardbook:' + name, { detail: detail }));
};
