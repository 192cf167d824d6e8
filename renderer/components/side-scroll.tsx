import { type ReactNode, useEffect, useRef, useState } from 'react';

/** Room for what may be wider than the page: the keyboard can reach and move it while it is. */
export function SideScroll({ children }: { children: ReactNode }) {
  const box = useRef<HTMLDivElement>(null);
  const [wider, setWider] = useState(false);
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const look = () => setWider(element.scrollWidth > element.clientWidth);
    const observer = new ResizeObserver(look);
    observer.observe(element);
    for (const child of element.children) observer.observe(child);
    return () => observer.disconnect();
  }, []);
  return (
    <div className="scroll" ref={box} {...(wider ? { tabIndex: 0 } : {})}>
      {children}
    </div>
  );
}
