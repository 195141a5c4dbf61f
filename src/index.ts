/** The public face: everything that is promised to those who use tapeshift from a program of their own. */

export { check } from './questions/check/study.js'
export { compare } from './questions/compare/study.js'
export { run } from './questions/run/study.js'
export { size } from './questions/size/study.js'
export { sweep } from './questions/sweep/study.js'
export { trace } from './questions/trace/study.js'
