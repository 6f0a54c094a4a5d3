// Makes what the package needs and is committed elsewhere: the bundle, the grammars, the licences.
//   node build.mjs             to dist/ and syntaxes/
//   node build.mjs --watch     the bundle anew with every change
//   node build.mjs --package   and then target/vscode/storyrod-VERSION.vsix, without a network
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import esbuild from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "..", "..");
const { version } = JSON.parse(readFileSync(join(here, "package.json"), "utf8"));

process.chdir(here);
for (const made of ["dist", "syntaxes"]) {
  rmSync(made, { recursive: true, force: true });
  mkdirSync(made);
}
copyGrammars();
for (const licence of ["LICENSE-APACHE", "LICENSE-MIT"]) copyFileSync(join(root, licence), licence);

const options = {
  entryPoints: ["src/extension.ts"],
  outfile: "dist/extension.js",
  bundle: true,
  platform: "node",
  format: "cjs",
  target: "node18",
  external: ["vscode"],
  mainFields: ["module", "main"],
  minify: true,
  legalComments: "none",
  metafile: true,
  logLevel: "warning",
};

if (process.argv.includes("--watch")) {
  await (await esbuild.context({ ...options, sourcemap: "inline", logLevel: "info" })).watch();
} else {
  const { metafile } = await esbuild.build(options);
  writeFileSync("dist/third-party-notices.txt", notices(Object.keys(metafile.inputs)));
  if (process.argv.includes("--package")) await pack();
}

function copyGrammars() {
  const from = join(root, "grammar", "textmate");
  const grammars = readdirSync(from).filter((name) => name.endsWith(".tmLanguage.json"));
  for (const name of grammars) copyFileSync(join(from, name), join("syntaxes", name));
}

/** The licences of whatever went into the bundle. */
function notices(inputs) {
  const folders = inputs.map((path) => /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(path)?.[0]);
  const bundled = [...new Set(folders)].filter((folder) => folder !== undefined).map((folder) => {
    const { name, version } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
    const licence = readdirSync(folder).find((file) => /^licen[cs]e/i.test(file));
    if (licence === undefined) throw new Error(`${name} is bundled and has no licence file`);
    return `${name} ${version}\n\n${readFileSync(join(folder, licence), "utf8").trim()}\n`;
  });
  return `The bundle holds these packages.\n\n${bundled.sort().join(`\n${"-".repeat(80)}\n\n`)}`;
}

async function pack() {
  const { createVSIX } = await import("@vscode/vsce");
  const folder = join(root, "target", "vscode");
  mkdirSync(folder, { recursive: true });
  const packagePath = join(folder, `storyrod-${version}.vsix`);
  await createVSIX({ cwd: here, packagePath, dependencies: false, allowMissingRepository: true, skipLicense: true });
  if (!existsSync(packagePath)) throw new Error(`${basename(packagePath)} was not made`);
}
