// Writes a PNG of three bytes a dot (as kept pictures are, so that PDF takes them in as they stand) from such bytes on standard
// input: pack.mjs WIDTH HEIGHT FILE. Without filters, few colours pack best.
import { readFileSync, writeFileSync } from "node:fs";
import { deflateSync, crc32 } from "node:zlib";

const [width, height] = process.argv.slice(2, 4).map(Number);
const dots = readFileSync(0);
if (dots.length !== width * height * 3)
  throw new Error(`${dots.length} bytes are not ${width} by ${height} dots.`);
const rows = Buffer.concat(Array.from({ length: height }, (_, y) => [Buffer.from([0]), dots.subarray(y * width * 3, (y + 1) * width * 3)]).flat());
const head = Buffer.alloc(13);
head.writeUInt32BE(width, 0);
head.writeUInt32BE(height, 4);
head.set([8, 2], 8);
const part = (name, content) => {
  const body = Buffer.concat([Buffer.from(name), content]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(content.length);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
};
writeFileSync(process.argv[4], Buffer.concat([
  Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
  part("IHDR", head), part("IDAT", deflateSync(rows, { level: 9, memLevel: 9 })), part("IEND", Buffer.alloc(0))]));
