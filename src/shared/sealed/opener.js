// Opens a sealed page. A classic script, inline, so that it runs from a host and from a file alike; src/shared/seal.ts is
// the other end. It asks nothing of the network and keeps nothing but what the reader ticks.
(() => {
  const byId = (id) => document.getElementById(id);
  const form = byId("unseal");
  const field = byId("passphrase");
  const said = byId("unseal-said");
  const sealed = JSON.parse(byId("sealed").textContent);
  const PLACE = "piecebook passphrase";
  const bytes = (base64) => Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
  const plain = (text) =>
    (
      text
        .normalize("NFKC")
        .toLowerCase()
        .match(/[a-z]+/g) || []
    ).join(" ");

  const kept = () => {
    try {
      return sessionStorage.getItem(PLACE);
    } catch {
      return null;
    }
  };
  const keep = (words) => {
    try {
      if (words === null) sessionStorage.removeItem(PLACE);
      else sessionStorage.setItem(PLACE, words);
    } catch {
      // A browser that keeps nothing asks on every page.
    }
  };

  async function open(words) {
    const encoder = new TextEncoder();
    const material = await crypto.subtle.importKey("raw", encoder.encode(words), "PBKDF2", false, ["deriveKey"]);
    const key = await crypto.subtle.deriveKey(
      { name: "PBKDF2", hash: "SHA-256", salt: bytes(sealed.salt), iterations: sealed.rounds },
      material,
      { name: "AES-GCM", length: 256 },
      false,
      ["decrypt"],
    );
    const head = `piecebook sealed page ${sealed.version}\n${sealed.rounds}\n${sealed.page}`;
    const text = await crypto.subtle.decrypt(
      { name: "AES-GCM", iv: bytes(sealed.iv), additionalData: encoder.encode(head), tagLength: 128 },
      key,
      bytes(sealed.text),
    );
    return JSON.parse(new TextDecoder().decode(text));
  }

  async function tryWords(words, quietly) {
    said.textContent = "Opening …";
    let page;
    try {
      page = await open(words);
    } catch {
      said.textContent = quietly
        ? ""
        : "That is not this page’s passphrase, or the page was damaged on its way. Check the words, or ask the malthouse.";
      if (quietly) keep(null);
      else field.focus();
      return;
    }
    document.title = page.title;
    document.body.innerHTML = page.html;
    const head = document.querySelector("h1");
    if (head !== null) {
      head.tabIndex = -1;
      head.focus();
    }
  }

  if (!globalThis.crypto || !crypto.subtle) {
    said.textContent =
      "This browser opens sealed pages only over https or from a file on your own disk. Use the https address, or save the page and open the file.";
    return;
  }
  form.hidden = false;
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const words = plain(field.value);
    if (words === "") {
      said.textContent = "Type or paste the words that the malthouse gave you.";
      field.focus();
      return;
    }
    keep(byId("keep").checked ? words : null);
    tryWords(words, false);
  });
  const before = kept();
  if (before !== null) tryWords(before, true);
})();
