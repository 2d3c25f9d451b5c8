// Runs a Python program in Pyodide and prints what its last expression gives.
// node browser.mjs PYODIDE WHEELS PACKAGE FOLDER...   with the program on stdin: only these folders
// of the package exist there.
import { readFileSync, readdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { text } from "node:stream/consumers";
import { pathToFileURL } from "node:url";

const [pyodideFolder, wheels, source, ...folders] = process.argv.slice(2);
const program = await text(process.stdin);
const { loadPyodide } = await import(pathToFileURL(join(resolve(pyodideFolder), "pyodide.mjs")));
const pyodide = await loadPyodide({
  env: { HOME: "/home/pyodide", PYTHONDONTWRITEBYTECODE: "1" }, // the folders are the real ones
  stdout: (line) => process.stderr.write(line + "\n"),
});

for (const wheel of readdirSync(wheels).filter((name) => name.endsWith(".whl"))) {
  pyodide.unpackArchive(new Uint8Array(readFileSync(join(wheels, wheel))), "wheel");
}
const target = "/home/pyodide/lightoff"; // in the working folder, which Python searches
pyodide.FS.mkdir(target);
pyodide.FS.writeFile(`${target}/__init__.py`, readFileSync(join(source, "__init__.py"), "utf8"));
for (const folder of folders) {
  pyodide.FS.mkdir(`${target}/${folder}`);
  pyodide.mountNodeFS(`${target}/${folder}`, resolve(source, folder));
}
process.stdout.write(pyodide.runPython(program));
