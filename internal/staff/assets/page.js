// Brings news by itself, and counts what a text will take. The page works without it.
(function () {
  "use strict";
  var area = document.querySelector("textarea[data-count]");
  if (area) {
    var out = document.getElementById(area.dataset.count);
    var plain = /^[\n\r -~¡£¤¥§¿ÄÅÆÇÉÑÖØÜßàäåæèéìñòöøùü]*$/;
    area.addEventListener("input", function () {
      var n = area.value.length, gsm = plain.test(area.value);
      var one = gsm ? 160 : 70, more = gsm ? 153 : 67;
      var parts = n === 0 ? 0 : n <= one ? 1 : Math.ceil(n / more);
      out.textContent = n === 0 ? "" : n + " characters, about " + parts + (parts === 1 ? " segment" : " segments") + " as a text";
    });
  }

  if (!document.body.hasAttribute("data-live") || !document.querySelector("[data-part]")) return;
  var busy = false, again = false;

  // swap puts a fresh part of the page in the place of an old one, unless somebody is
  // typing in it; what was open stays open, and who was at a link stays there.
  function swap(old, page) {
    var fresh = page.getElementById(old.id), at = document.activeElement;
    var inside = at && old.contains(at);
    if (!fresh || fresh.innerHTML === old.innerHTML || inside && /^(INPUT|TEXTAREA|SELECT)$/.test(at.tagName)) return;
    var held = inside ? at.getAttribute("href") : null, top = old.querySelector(".talk");
    var open = Array.prototype.map.call(old.querySelectorAll("details"), function (d) { return d.open; });
    old.replaceWith(document.adoptNode(fresh));
    fresh.querySelectorAll("details").forEach(function (d, i) { d.open = !!open[i]; });
    var talk = fresh.querySelector(".talk");
    if (talk && top) talk.scrollTop = talk.scrollHeight;
    if (held) { var link = fresh.querySelector('a[href="' + CSS.escape(held) + '"]'); if (link) link.focus(); }
  }

  function changed() {
    if (busy) { again = true; return; }
    busy = true;
    fetch(location.href, { headers: { "X-News": "1" }, credentials: "same-origin" })
      .then(function (r) { if (!r.ok || r.redirected) throw new Error(String(r.status)); return r.text(); })
      .then(function (html) {
        var page = new DOMParser().parseFromString(html, "text/html");
        document.querySelectorAll("[data-part]").forEach(function (old) { swap(old, page); });
      })
      .catch(function () { })
      .finally(function () { busy = false; if (again) { again = false; changed(); } });
  }

  var news = new EventSource("/staff/news");
  news.addEventListener("changed", changed);
  setInterval(changed, 60000); // waits grow longer even where nothing happens
  addEventListener("pagehide", function () { news.close(); });
})();
