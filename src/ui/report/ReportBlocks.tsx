import type { ComponentChildren } from 'preact';
import type { Block, FigureName, ReportDocument, Section } from '../../report/document';
import { t } from '../../text/text';
import { FindingsList } from '../result/FindingsList';
import { ModelTable } from '../result/ModelTable';

interface ReportBlocksProps {
  readonly document: ReportDocument;
  /** Draws a figure by its name. */
  figure(name: FigureName): ComponentChildren;
}

/** A report's sections and blocks as headings, paragraphs, lists, tables and figures. */
export function ReportBlocks({
  document: { title, subtitle, sections },
  figure,
}: ReportBlocksProps) {
  return (
    <>
      <h2 class="report-title" id="report-title">
        {title}
      </h2>
      <p class="report-subtitle">{subtitle}</p>
      {sections.map((section) => (
        <ReportSection key={section.title} section={section} figure={figure} />
      ))}
    </>
  );
}

function ReportSection(props: {
  readonly section: Section;
  figure(name: FigureName): ComponentChildren;
}) {
  const { section, figure } = props;
  return (
    <section class="report-section">
      {section.title !== '' && <h3>{section.title}</h3>}
      {section.blocks.map((block, index) => (
        <ReportBlock key={index} block={block} figure={figure} />
      ))}
    </section>
  );
}

function ReportBlock(props: {
  readonly block: Block;
  figure(name: FigureName): ComponentChildren;
}) {
  const { block, figure } = props;
  switch (block.kind) {
    case 'quote':
      return (
        <blockquote class="report-quote" data-role="quotable">
          {block.texts.map((text) => (
            <p key={text}>{text}</p>
          ))}
        </blockquote>
      );
    case 'paragraphs':
      return (
        <>
          {block.texts.map((text) => (
            <p key={text}>{text}</p>
          ))}
        </>
      );
    case 'steps':
      return (
        <ol class="report-list">
          {block.texts.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ol>
      );
    case 'facts':
      return (
        <dl class="report-facts">
          {block.facts.map(({ name, text }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      );
    case 'findings':
      return <FindingsList findings={block.findings} />;
    case 'table':
      return <ModelTable table={block.table} />;
    case 'checks':
      return (
        <ul class="report-list">
          {block.checks.map(({ verdict, message, remedy }) => (
            <li key={message}>
              <strong>{t(`result.fit.verdict.${verdict}`)}</strong>: {message}
              {remedy !== null && ` ${remedy}`}
            </li>
          ))}
        </ul>
      );
    case 'warnings':
      return (
        <ul class="report-list report-warnings">
          {block.reasons.map(({ code, message, remedy }) => (
            <li key={`${code}${message}`} data-code={code}>
              {message}
              {!block.brief && remedy !== undefined && ` ${remedy}`}
            </li>
          ))}
        </ul>
      );
    case 'figures':
      return (
        <div class={`report-figures report-figures-${block.layout}`}>
          {block.names.map((name) => figure(name))}
        </div>
      );
    case 'listing':
      return <pre class="report-listing">{block.text}</pre>;
  }
}
