// The marking page of a dog's owner.

import { speak } from "../../ring/say.js";
import { work } from "./work.js";

const page = JSON.parse(document.getElementById("page").textContent);
speak(page.language, page.words);
work(page);
