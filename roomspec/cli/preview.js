// Keeps the page as the job is: fetches its pieces when told that they changed, and replaces those that differ.
"use strict";

const held = new Map();
const faces = new Map();
let since = null;
let fetching = false;
let again = false;

const byId = (name) => document.getElementById(name);

async function fetched() {
  const answer = await fetch(since === null ? "pieces" : `pieces?since=${since}`);
  if (!answer.ok) throw new Error(`${answer.status}`);
  return answer.json();
}

// What can have the focus, in the nearest thing around the focused one that has a name.
function stops(holder) {
  return [...holder.querySelectorAll("summary, button, a, [tabindex]")];
}

function focusIn(box) {
  const focused = document.activeElement;
  if (!box.contains(focused)) return () => {};
  const holder = focused.closest("[id]");
  const at = stops(holder).indexOf(focused);
  return () => stops(byId(holder.id) ?? box)[at]?.focus({ preventScroll: true });
}

// Drawings that are as they were stay the very same elements: they do not flicker, and what is opened stays open.
function replaced(box, html) {
  const refocus = focusIn(box);
  const wide = () => [...box.querySelectorAll(".wide")];
  const scrolled = wide().map((one) => one.scrollLeft);
  const made = document.createElement("template");
  made.innerHTML = html;
  for (const fresh of made.content.querySelectorAll(".face")) {
    const old = byId(fresh.id);
    const same = faces.get(fresh.id) === fresh.outerHTML;
    faces.set(fresh.id, fresh.outerHTML);
    if (old && same) fresh.replaceWith(old);
    else if (old) fresh.open = old.open;
  }
  box.replaceChildren(made.content);
  wide().forEach((one, at) => { one.scrollLeft = scrolled[at] ?? 0; });
  if (document.body.dataset.editor === "yes") {
    for (const one of box.querySelectorAll("button.show")) one.hidden = false;
  }
  refocus();
}

// What the reader looks at keeps its place in the window while something above it changes its height.
function steady(change) {
  const seen = [...document.querySelectorAll(".folded, .room, .face")];
  const anchor = window.scrollY > 0 && seen.findLast((one) => one.getBoundingClientRect().top <= 1);
  const name = anchor && anchor.id;
  const before = anchor && anchor.getBoundingClientRect().top;
  const aside = document.querySelector("aside");
  const down = aside.scrollTop;
  change();
  aside.scrollTop = down;
  const after = name && byId(name);
  if (after) window.scrollBy({ top: after.getBoundingClientRect().top - before, behavior: "instant" });
}

function room(name) {
  const section = document.createElement("section");
  section.id = name;
  section.className = "room";
  section.innerHTML = '<h2 data-told></h2><div class="piece"></div>';
  return section;
}

function put(piece, section) {
  const told = section.querySelector("[data-told]");
  const before = held.get(piece.name) ?? {};
  if (before.told !== piece.told) told.innerHTML = piece.told;
  if (before.html !== piece.html) replaced(section.querySelector(".piece"), piece.html);
  section.classList.toggle("old", piece.old);
  held.set(piece.name, piece);
}

function putRooms(pieces) {
  const rooms = byId("rooms");
  const named = new Set(pieces.map((piece) => piece.name));
  for (const gone of [...rooms.children].filter((one) => !named.has(one.id))) {
    held.delete(gone.id);
    gone.remove();
  }
  let next = rooms.firstElementChild;
  for (const piece of pieces) {
    const section = byId(piece.name) ?? room(piece.name);
    if (section === next) next = next.nextElementSibling;
    else rooms.insertBefore(section, next);
    put(piece, section);
  }
}

function say(words, late) {
  const state = byId("state");
  if (state.textContent !== words) state.textContent = words;
  state.classList.toggle("late", late);
}

function show(page) {
  say(page.state, page.late);
  document.title = `${page.title}: preview`;
  document.querySelector("h1").textContent = page.title;
  steady(() => {
    for (const piece of page.pieces) put(piece, byId(piece.name));
    putRooms(page.rooms);
  });
  if (since === null) since = page.cost;
  document.body.dataset.version = page.version;
}

async function follow() {
  again = true;
  if (fetching) return;
  fetching = true;
  try {
    while (again) {
      again = false;
      show(await fetched());
    }
  } catch {
    gone();
  } finally {
    fetching = false;
  }
}

function gone() {
  say("The preview has ended: what is shown is as it was.", true);
}

async function copied(button) {
  await navigator.clipboard.writeText(button.dataset.text);
  button.textContent = "Copied";
  setTimeout(() => { button.textContent = "Copy"; }, 1500);
}

document.addEventListener("click", (event) => {
  const button = event.target.closest("button");
  if (!button) return;
  if (button.matches(".copy")) copied(button);
  const { path, line } = button.dataset;
  if (button.matches(".show")) fetch("show", { method: "POST", body: JSON.stringify({ path, line: Number(line) }) });
});
byId("full").addEventListener("change", (event) => document.body.classList.toggle("full", event.target.checked));

const events = new EventSource("events");
events.addEventListener("changed", follow);
events.addEventListener("error", gone);
