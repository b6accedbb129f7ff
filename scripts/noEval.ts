/** Makes libraries run where the policy forbids making code from text. */
import type { Plugin } from 'vite';

const OPENCV = /\/@techstark\/opencv-js\/dist\/opencv\.js$/;
/** Asks by `eval` whether there are generators, and where that is forbidden another algorithm would sum the series. */
const GENERATORS = /\/@stdlib\/assert-has-generator-support\/lib\/index\.js$/;

/**
 * What OpenCV's binding writes as text and has compiled, written as closures that do the same (as Emscripten itself
 * does with DYNAMIC_EXECUTION=0).
 */
const CHANGES: readonly (readonly [name: string, from: RegExp, to: string])[] = [
  [
    'named functions',
    /return new Function\("body",.*?\)\(body\)(?=\})/,
    'return{[name]:function(){return body.apply(this,arguments)}}[name]',
  ],
  [
    'calls by pointer',
    /return new Function\("dynCall","rawFunction",body\)\(dynCall,rawFunction\)(?=\})/,
    'return function(...args){return dynCall(rawFunction,...args)}',
  ],
  [
    'calls of bound functions',
    /var invokerFunction=new_\(Function,args1\)\.apply\(null,args2\);/,
    `var invokerFunction=function(...given){
if(given.length!==argCount-2){throwBindingError("function "+humanName+" called with "+given.length+" arguments, expected "+(argCount-2)+" args!")}
var destructors=needsDestructorStack?[]:null;
var wired=argTypes.slice(isClassMethodFunc?1:2).map((type,i)=>type.toWireType(destructors,isClassMethodFunc?(i===0?this:given[i-1]):given[i]));
var rv=cppInvokerFunc(cppTargetFunc,...wired);
if(needsDestructorStack){runDestructors(destructors)}
else{argTypes.slice(isClassMethodFunc?1:2).forEach((type,i)=>{if(type.destructorFunction!==null){type.destructorFunction(wired[i])}})}
if(returns){return argTypes[0].fromWireType(rv)}
};`,
  ],
  [
    'calls out of the binding',
    /var invokerFunction=new_\(Function,params\)\.apply\(null,args\);/,
    `var invokerFunction=function(handle,name,destructors,given){
var offset=0;
var read=types.slice(1).map((type)=>{var value=type.readValueFromPointer(given+offset);offset+=type["argPackAdvance"];return value});
var rv=handle[name](...read);
types.slice(1).forEach((type,i)=>{if(type["deleteObject"]){type.deleteObject(read[i])}});
if(!retType.isVoid){return retType.toWireType(destructors,rv)}
};`,
  ],
];

const EMBEDDED = /(?<=wasmBinaryFile=)"data:application\/octet-stream;base64,([A-Za-z0-9+/=]+)"/;
const STARTING = /function instantiateAsync\(\)\{.*?\}(?=if\(Module\["instantiateWasm"\]\))/;

/**
 * OpenCV's source as a module that fetches its WebAssembly, whose bytes `put` puts somewhere; it gives the address as an
 * expression. As text in the file, each thread that measures would hold it three times (source, string, bytes), 30 MiB.
 * A file that does not come is a `TypeError` to `onAbort`.
 */
export function withWasmApart(source: string, put: (wasm: Buffer) => string): string {
  const base64 = EMBEDDED.exec(source)?.[1];
  if (base64 === undefined || !STARTING.test(source)) throw notAsExpected('WebAssembly');
  const address = put(Buffer.from(base64, 'base64'));
  const code = source
    .replace(EMBEDDED, () => '""')
    .replace(
      STARTING,
      () => `function instantiateAsync(){
return fetch(${address}).then(function(response){
if(!response.ok){throw new TypeError("the server answered "+response.status)}
if(response.headers.get("Content-Type")==="application/wasm"){return WebAssembly.instantiateStreaming(response,info)}
return response.arrayBuffer().then(function(bytes){return WebAssembly.instantiate(bytes,info)})
}).then(receiveInstantiatedSource,abort)
}`,
    );
  return `const module={exports:{}};\n${code}\nexport default module.exports;`;
}

const notAsExpected = (what: string) =>
  new Error(
    `OpenCV is not as scripts/noEval.ts expects it (${what}): hold the new version against it.`,
  );

/** OpenCV's source without code made from text. Throws where it is not as expected. */
export function withoutEval(source: string): string {
  const changed = CHANGES.reduce((code, [name, from, to]) => {
    if (!from.test(code)) throw notAsExpected(name);
    return code.replace(from, () => to);
  }, source);
  if (/new Function\(|new_\(Function\b|\beval\(/.test(changed)) {
    throw new Error('OpenCV makes code from text in a place that scripts/noEval.ts does not know.');
  }
  return changed;
}

/** For the page's build and for that of its threads. */
export const noEval = (): Plugin => ({
  name: 'no-eval',
  apply: 'build',
  enforce: 'pre',
  transform: {
    filter: { id: [OPENCV, GENERATORS] },
    handler(source, id) {
      if (!OPENCV.test(id)) return { code: 'module.exports = () => true;', map: null };
      const put = (wasm: Buffer) =>
        `import.meta.ROLLUP_FILE_URL_${this.emitFile({ type: 'asset', name: 'opencv.wasm', source: wasm })}`;
      return { code: withWasmApart(withoutEval(source), put), map: null };
    },
  },
});
