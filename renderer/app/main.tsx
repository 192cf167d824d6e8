import '@fontsource-variable/source-sans-3/wght.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/frame.css';
import './styles/parts.css';
import './styles/form.css';
import './styles/card.css';
import './styles/tool-room.css';
import './styles/checks.css';
import './styles/at-joint.css';
import './styles/life.css';
import './styles/joint-record.css';
import './styles/history.css';
import './styles/breakout.css';
import '../print/print.css';
import '../print/tool-room.css';
import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { Router } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { queryClient } from './ask.ts';
import { Gate } from './gate.tsx';
import { applyTheme } from './theme.ts';

applyTheme();

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no element with id "root"');
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queryClient}>
      <Router hook={useHashLocation}>
        <Gate />
      </Router>
    </QueryClientProvider>
  </StrictMode>,
);
