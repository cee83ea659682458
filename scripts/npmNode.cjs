// npm leaves out optional packages that do not want the Node it runs on, native parts of the build among them. These
// packages will run on the Node that comes with them, so that is the one npm is to judge them by.

const { optionalDependencies } = require("../package.json");

const [bundled] = Object.values(optionalDependencies);
Object.defineProperty(process, "version", { value: `v${bundled}` });
