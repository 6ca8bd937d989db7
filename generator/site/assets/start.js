/* The namespace of every script of the book, and how a component begins. Scripts are classic: a page
   opened from a folder must run them. */
var Swardbook = window.Swardbook || {};

/* Runs `start(root)` on every element with data-component="name", once all scripts of the page are read, so that no
   component minds the order of the files. What fails leaves its page as it was. */
Swardbook.component = function (name, start) {
  function startAll() {
    var roots = document.querySelectorAll('[data-component~="' + name + '"]');
    Array.prototype.forEach.call(roots, function (root) {
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

/* A new element with a class and text; text is never read as markup. */
Swardbook.element = function (tag, className, text) {
  var made = document.createElement(tag);
  if (className) made.className = className;
  if (text !== undefined && text !== null) made.textContent = text;
  return made;
};

/* Says to the rest of the page that something was chosen, e.g. 'swardbook:units' with {value: 'us'}. */
Swardbook.tell = function (name, detail) {
  document.dispatchEvent(new CustomEvent('swardbook:' + name, { detail: detail }));
};
