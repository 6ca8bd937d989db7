/* Photographs of a lawn, by the reader's own camera: made smaller, kept on this device and nowhere else, and taken off again by hand.
   They are large, so they are kept beside the rows and not among them: in IndexedDB, which a browser may refuse to a page from a folder.

     database 'swardbook', store 'photographs': {id, lawn: id of the lawn, on: ISO date, name, type, bytes: ArrayBuffer} */
(function () {
  'use strict';
  var BASE = 'swardbook', STORE = 'photographs', LONGEST_SIDE = 1600, QUALITY = 0.8, TYPE = 'image/jpeg', MOST = 60, add = Swardbook.add;
  var opened = null;

  function base() {
    opened = opened || window.idb.openDB(BASE, 1, { upgrade: function (fresh) { fresh.createObjectStore(STORE, { keyPath: 'id' }).createIndex('lawn', 'lawn'); } });
    return opened;
  }

  function isSound(each) { return Swardbook.shape.isRecord(each) && each.bytes instanceof ArrayBuffer && typeof each.on === 'string'; }

  function ofLawn(id) {
    return base().then(function (db) { return db.getAllFromIndex(STORE, 'lawn', id); }).then(function (all) {
      return all.filter(isSound).sort(function (one, other) { return one.on < other.on ? 1 : one.on > other.on ? -1 : 0; });
    });
  }

  function put(photograph) { return base().then(function (db) { return db.put(STORE, photograph); }); }
  function remove(id) { return base().then(function (db) { return db.delete(STORE, id); }); }

  /* The picture with its longest side made short enough, as JPEG; upright, as the camera meant it. */
  function smaller(file) {
    return window.createImageBitmap(file, { imageOrientation: 'from-image' }).then(function (bitmap) {
      var scale = Math.min(1, LONGEST_SIDE / Math.max(bitmap.width, bitmap.height)), canvas = Swardbook.element('canvas');
      canvas.width = Math.max(1, Math.round(bitmap.width * scale));
      canvas.height = Math.max(1, Math.round(bitmap.height * scale));
      canvas.getContext('2d').drawImage(bitmap, 0, 0, canvas.width, canvas.height);
      bitmap.close();
      return new Promise(function (done, failed) {
        canvas.toBlob(function (blob) { if (blob) { done(blob.arrayBuffer()); } else { failed(new Error('no picture')); } }, TYPE, QUALITY);
      });
    });
  }

  /* As an address that the page's policy lets an image have. */
  function address(photograph) {
    return new Promise(function (done, failed) {
      var reader = new FileReader();
      reader.onload = function () { done(reader.result); };
      reader.onerror = failed;
      reader.readAsDataURL(new Blob([photograph.bytes], { type: TYPE }));
    });
  }

  /* say(words, back): tells what was done, and how to undo it. */
  Swardbook.lawnPhotographs = function (root, say) {
    var open = {};

    function refused() { say('This browser keeps no photographs for this page. Open the book from its own address, or make room on the device.'); }

    function picture(list, photograph, again) {
      var made = add(list, 'li', 'sb-lawns__photograph'), image = add(made, 'img');
      image.alt = 'Photograph of ' + Swardbook.dates.words(Swardbook.dates.fromIso(photograph.on) || Swardbook.dates.today());
      address(photograph).then(function (data) { image.src = data; }, refused);
      add(made, 'span', 'sb-note', Swardbook.dates.words(Swardbook.dates.fromIso(photograph.on) || Swardbook.dates.today()));
      made.appendChild(Swardbook.button('Delete', function () {
        remove(photograph.id).then(function () {
          say('The photograph is deleted.', function () { put(photograph).then(again, refused); });
          again();
        }, refused);
      }));
    }

    function taken(lawn, files, again) {
      var today = Swardbook.dates.iso(Swardbook.dates.today());
      return Promise.all(files.map(function (file) {
        return smaller(file).then(function (bytes) {
          return put({ id: Swardbook.rows.random(), lawn: lawn.id, on: today, name: file.name.slice(0, 80), type: TYPE, bytes: bytes }).then(function () { return ''; });
        }).catch(function (error) { return error && error.name === 'QuotaExceededError' ? 'full' : 'unread'; });
      })).then(function (all) {
        var full = all.indexOf('full') >= 0, unread = all.filter(function (each) { return each === 'unread'; }).length;
        say((full ? 'There is no room on this device for more photographs. ' : '') + (unread ? unread + ' could not be read as a picture.' : full ? '' : all.length === 1 ? 'The photograph is kept.' : 'The photographs are kept.'));
        again();
      });
    }

    /* Ids of photographs whose lawn is none of these. */
    function strays(lawns) {
      return base().then(function (db) {
        return Promise.all([db.getAllKeys(STORE)].concat(lawns.map(function (lawn) { return db.getAllKeysFromIndex(STORE, 'lawn', lawn.id); })));
      }).then(function (found) {
        var known = [].concat.apply([], found.slice(1));
        return found[0].filter(function (id) { return known.indexOf(id) < 0; });
      });
    }

    return {
      /* Says in a box that photographs of lawns that were taken off are still here, and deletes them when asked. */
      strays: function (box, lawns) {
        strays(lawns).then(function (ids) {
          box.textContent = '';
          if (!ids.length) { return; }
          add(box, 'p', '', ids.length === 1 ? 'A photograph of a lawn that was taken off is still on this device.' : ids.length + ' photographs of lawns that were taken off are still on this device.');
          add(box, 'p', 'sb-lawns__ways').appendChild(Swardbook.button('Delete ' + (ids.length === 1 ? 'it' : 'them'), function () {
            base().then(function (db) { return Promise.all(ids.map(function (id) { return db.get(STORE, id); })); }).then(function (all) {
              return Promise.all(ids.map(remove)).then(function () {
                box.textContent = '';
                say('Deleted.', function () { Promise.all(all.map(put)).then(function () { root.dispatchEvent(new Event('swardbook:photographs')); }, refused); });
              });
            }).catch(refused);
          }));
        }, function () { /* None can be kept here, so none are. */ });
      },
      /* Puts the photographs of a lawn, folded, into its item. */
      show: function (item, lawn) {
        var box = add(item, 'details', 'sb-lawns__photographs'), title = add(box, 'summary', '', 'Photographs'), id = 'photographs-' + lawn.id;
        var label = add(box, 'label', 'sb-button sb-button--quiet sb-lawns__file', 'Take or choose photographs'), input = add(label, 'input', 'sb-lawns__chooser'), list = add(box, 'ul', 'sb-lawns__pictures');
        Object.assign(input, { id: id, type: 'file', accept: 'image/*', multiple: true });
        box.open = Boolean(open[lawn.id]);
        function again() {
          ofLawn(lawn.id).then(function (all) {
            title.textContent = 'Photographs' + (all.length ? ': ' + all.length : '');
            list.textContent = '';
            input.disabled = all.length >= MOST;
            if (box.open) { all.forEach(function (each) { picture(list, each, again); }); }
          }, function () { title.textContent = 'Photographs: none can be kept here'; input.disabled = true; });
        }
        box.addEventListener('toggle', function () {
          open[lawn.id] = box.open;
          again();
        });
        input.addEventListener('change', function () {
          if (input.files.length) { taken(lawn, Swardbook.list(input.files).slice(0, MOST), again).then(function () { input.value = ''; }); }
        });
        again();
      }
    };
  };
})();
