// What the server keeps aside until somebody decides: written by a lost tablet, of a dog withdrawn or moved, elsewhere.

import { fill, h } from "./dom.js";
import { postForm } from "./exchange.js";
import { reasonSaid } from "./reasons.js";
import { ofItself, wordsOf } from "./said.js";
import { spoken, t } from "./say.js";

/**
 * @param {import("./store.js").Store} store
 * @param {any} day
 * @param {{url: (id: string) => string, mayDecide: boolean, decided: () => Promise<void>}} page
 */
export function heldOf(store, day, page) {
  const list = h("div");
  const wrong = h("p", { class: "wrong", role: "alert" });
  const element = h("section", { class: "held", "aria-label": t("Held for a decision"), hidden: true },
    h("h2", {}, t("Held for a decision")), h("p", {}, t("These do not count until somebody takes them in.")), wrong, list);
  let shown = "";
  const update = async () => {
    const held = await store.held();
    const key = held.map(({ id }) => id).join();
    if (key === shown) return;
    shown = key;
    element.hidden = !held.length;
    fill(list, held.map((edit) => rowOf(edit, wordsOf(day, edit.sheet))));
  };
  function rowOf(edit, known) {
    const { about, words } = known ?? { about: t("Not of this ring's classes"), words: ofItself };
    const buttons = [["yes", t("It counts")], ["no", t("Leave it out")]].map(([counts, text]) => h("button", {
      type: "button", class: "option", onclick: () => decide(edit.id, counts),
    }, text));
    const why = reasonSaid(edit.reason ?? "", spoken());
    return h("div", { class: "dispute" },
      h("p", {}, t("{name}: {words}", { name: `${about}, ${words.name(edit.field)}`, words: words.value(edit) })), h("p", { class: "why", lang: why.lang }, why.words),
      known && page.mayDecide ? h("div", { class: "options" }, buttons) : h("p", { class: "help" }, known ? t("The judge or the show secretary decides.") : t("The show secretary decides.")));
  }
  async function decide(id, counts) {
    wrong.textContent = await postForm(page.url(id), { counts });
    await page.decided();
  }
  return { element, update };
}
