import { useAsk } from '../app/ask.ts';
import { Asked } from './asked.tsx';

interface PictureProps {
  readonly hash: string;
  /** What it shows, said in its place. */
  readonly label: string;
}

/** A picture kept beside the register. One that no longer has its hash is not shown: it may be of another thing. */
export function Picture({ hash, label }: PictureProps) {
  const picture = useAsk('attachment.get', { hash });
  return (
    <Asked asking={picture} what="the picture">
      {({ name, mediaType, content, intact }) =>
        intact && content !== null ? (
          <figure className="picture">
            <img src={`data:${mediaType};base64,${content}`} alt={label} />
            <figcaption className="small">{name}</figcaption>
          </figure>
        ) : (
          <p className="failure" role="alert">
            The picture “{name}” no longer has the content that was recorded, or can not be read. It is not
            shown.
          </p>
        )
      }
    </Asked>
  );
}
