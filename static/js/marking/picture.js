// From a file or a frame of a clip to a picture of bounded size, drawn anew, so that where it was taken never leaves.

import { t } from "../../ring/say.js";

/** @typedef {{bytes: ArrayBuffer, width: number, height: number}} Picture */

const QUALITY = 0.92;

/** @param {Blob} file @param {number} longest @returns {Promise<Picture>} */
export async function pictureOf(file, longest) {
  const address = URL.createObjectURL(file);
  const image = new Image();
  image.src = address;
  try {
    await image.decode();
    return await drawn(image, image.naturalWidth, image.naturalHeight, longest);
  } catch {
    throw new Error(t("This file is no photo that this device can read: choose a JPEG, PNG or WebP picture."));
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** The frame that a clip stands at. @param {HTMLVideoElement} video @param {number} longest @returns {Promise<Picture>} */
export function frameOf(video, longest) {
  return drawn(video, video.videoWidth, video.videoHeight, longest);
}

async function drawn(source, wide, high, longest) {
  const by = Math.min(1, longest / Math.max(wide, high));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(wide * by);
  canvas.height = Math.round(high * by);
  const pen = canvas.getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(source, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", QUALITY));
  if (!blob) throw new Error(t("This picture is too large for this device."));
  return { bytes: await blob.arrayBuffer(), width: canvas.width, height: canvas.height };
}
