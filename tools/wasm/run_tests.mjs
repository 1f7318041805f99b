// Runs the engine's tests under WebAssembly Python: the runtime a browser would load, here in Node.
// Usage: node run_tests.mjs SITE_PACKAGES   (where pytest and what it needs are installed)
import { cpSync, existsSync, mkdirSync, rmSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { loadPyodide } from "pyodide";

const here = dirname(fileURLToPath(import.meta.url));
const root = resolve(here, "..", "..");
const site = resolve(process.argv[2]);
const build = join(root, "build", "wasm-site");

// Only the test runner and pure-Python helpers: whatever else the engine wanted would be missing.
const RUNNER = ["pytest", "_pytest", "pluggy", "iniconfig", "packaging", "pygments"];
const MODULES = ["py.py"];

rmSync(build, { recursive: true, force: true });
mkdirSync(build, { recursive: true });
for (const name of [...RUNNER, ...MODULES]) {
  if (existsSync(join(site, name))) cpSync(join(site, name), join(build, name), { recursive: true });
}

const python = await loadPyodide();
for (const [place, folder] of [["/repo", root], ["/site", build]]) {
  python.FS.mkdirTree(place);
  python.FS.mount(python.FS.filesystems.NODEFS, { root: folder }, place);
}
python.globals.set("driver", "/repo/tools/wasm/engine_tests.py");
const status = python.runPython(`
import runpy, sys
sys.path[:0] = ["/repo/src", "/repo", "/site"]
sys.dont_write_bytecode = True
runpy.run_path(driver)["run"]()
`);
process.exit(status);
