import './theme/index.ts';
import { render } from 'preact';
import { App } from './app.tsx';
import { fetchPlacesAhead } from './frame/lazy.tsx';
import { startBench } from './state/bench.ts';
import { followAddress } from './state/route.ts';
import { applySettings } from './state/settings.ts';
import { watchKeyboard } from './frame/keyboard.ts';

applySettings();
followAddress();
watchKeyboard();
const root = document.getElementById('app');
if (root) render(<App />, root);
void startBench().then(() => setTimeout(fetchPlacesAhead, 2500));
