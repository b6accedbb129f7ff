import { readFileSync } from 'node:fs';
import * as gd from './src/launch/gasDynamics';
import { MODELS } from './src/launch/models';
import { compareModels } from './src/compare/compareModels';
import { launcherOf } from './src/launch/fromShot';
import { validateShot } from './src/shot/parse';
const s=validateShot(JSON.parse(readFileSync('/tmp/series/sample-clips/series/2031-05-06-L.shot.json','utf8'))); if(!s.ok) throw 1;
const r=JSON.parse(readFileSync('/tmp/series/sample-clips/series/2031-05-06-L.result.json','utf8'));
const l=launcherOf(s.value); if(!l.ok) throw 2;
for (const k of ['run','varied'] as const) { const f=MODELS.gasDynamics[k]; (MODELS.gasDynamics as any)[k]=(x:any)=>{ try { return f(x);} catch(e:any) { if(e.code!=='badLauncher') console.log('FAILED',k,e.code,JSON.stringify(x)); throw e; } }; }
compareModels({...l.value,coverage:.95,measured:{speed:r.exitVelocity,lead:r.lead}},(p)=>{console.log(p.kind,p.model, process.cpuUsage().user/1e6); if(p.kind==='outlook') console.log(JSON.stringify(p.told.residuals?.map(x=>[x.at,x.speed.value,x.speed.u])), JSON.stringify(p.told.lengths.map(x=>[x.at,x.speed.value,x.speed.u])))});
