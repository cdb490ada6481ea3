// Sends photos that wait on this device from whichever page of the owner's is open, and says so.

import { speak, t } from "../../ring/say.js";
import { drafts } from "./drafts.js";
import { keepSending } from "./sending.js";

const status = document.getElementById("photos-waiting");
const { language, words } = JSON.parse(document.getElementById("said").textContent);
speak(language, words);

async function tell() {
  const waiting = (await drafts().catch(() => [])).filter((draft) => draft.state === "waiting").length;
  status.hidden = waiting === 0 && !status.textContent;
  if (waiting) status.textContent = t("{n} photo on this device waits for the network.|{n} photos on this device wait for the network.", { n: waiting });
  else if (!status.hidden) status.textContent = t("Every photo of this device is on the server.");
}

await tell();
keepSending(tell);
