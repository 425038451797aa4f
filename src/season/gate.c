/* The gate: libxml2 with its dangers turned off, watched while it reads. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/gate.h"

#include <libxml/SAX2.h>
#include <string.h>

#include "season/document.h"
#include "season/text.h"

#define MOST_DEPTH 16
#define MOST_NAMES 10000

#if LIBXML_VERSION >= 21200
typedef const xmlError *XmlError;
#else
typedef xmlError *XmlError;
#endif

typedef struct
{
  LwReader *reader;
  const char *data;      /* not yet given to the parser */
  const char *end;
  xmlParserCtxt *parser;
  gboolean closed;       /* a problem that ends the reading has been told */
  xmlNode *stray;        /* the last element told to hold stray text */
} Gate;

static Gate *
gate_of (void *ctxt)
{
  return ((xmlParserCtxt *) ctxt)->_private;
}

static guint
line_now (void *ctxt)
{
  return (guint) ((xmlParserCtxt *) ctxt)->input->line;
}

static void
close_gate (void       *ctxt,
            const char *remedy,
            const char *what)
{
  gate_of (ctxt)->closed = TRUE;
  lw_reader_tell (gate_of (ctxt)->reader, line_now (ctxt), remedy, "%s", what);
  xmlStopParser (ctxt);
}

static void
on_dtd (void          *ctxt,
        const xmlChar *name,
        const xmlChar *external,
        const xmlChar *system)
{
  close_gate (ctxt, _ ("Remove the “<!DOCTYPE …>” and what it declares."),
              _ ("The file has a document type declaration, which is not let in."));
}

static void
on_start (void           *ctxt,
          const xmlChar  *name,
          const xmlChar  *prefix,
          const xmlChar  *uri,
          int             n_namespaces,
          const xmlChar **namespaces,
          int             n_attributes,
          int             n_defaulted,
          const xmlChar **attributes)
{
  xmlParserCtxt *parser = ctxt;

  if (parser->nodeNr >= MOST_DEPTH)
    {
      close_gate (ctxt, _ ("Open another file, or the last good copy."),
                  _ ("Elements are nested too deeply."));
      return;
    }

  xmlSAX2StartElementNs (ctxt, name, prefix, uri, n_namespaces, namespaces,
                         n_attributes, n_defaulted, attributes);
  if (parser->node != NULL)
    parser->node->_private = GUINT_TO_POINTER (line_now (ctxt));
}

/* The first character that is no blank; NULL if there is none. */
static const xmlChar *
first_dark (const xmlChar *text,
            int            length)
{
  for (int i = 0; i < length; i++)
    if (strchr (" \t\r\n", text[i]) == NULL)
      return text + i;

  return NULL;
}

/* Unknown elements are told of by themselves, so their text is not. */
static gboolean
may_hold_text (const xmlNode *node)
{
  for (int i = 0; i < LW_N_ELEMENTS; i++)
    if (strcmp (lw_shape ((LwElement) i)->name, (const char *) node->name) == 0)
      return lw_shape ((LwElement) i)->text || lw_shape ((LwElement) i)->points;

  return TRUE;
}

static void
on_text (void          *ctxt,
         const xmlChar *text,
         int            length)
{
  xmlNode *node = ((xmlParserCtxt *) ctxt)->node;
  const xmlChar *dark;
  guint line = line_now (ctxt);

  if (node == NULL || may_hold_text (node))
    {
      xmlSAX2Characters (ctxt, text, length);
      return;
    }

  dark = first_dark (text, length);
  if (dark == NULL || node == gate_of (ctxt)->stray)
    return;

  for (; dark < text + length; dark++)
    line -= *dark == '\n';

  gate_of (ctxt)->stray = node;
  lw_reader_tell (gate_of (ctxt)->reader, line,
                  _ ("Put the text into a note element, or remove it."),
                  _ ("There is text in “%s”, where none may stand."), (const char *) node->name);
}

static void
tell_unkept (void          *ctxt,
             const xmlChar *text,
             const char    *what)
{
  guint line = line_now (ctxt);

  for (; text != NULL && *text != '\0'; text++)
    line -= *text == '\n';

  lw_reader_tell (gate_of (ctxt)->reader, line,
                  _ ("Use a note element instead, which is kept."), "%s", what);
}

static void
on_comment (void          *ctxt,
            const xmlChar *text)
{
  tell_unkept (ctxt, text, _ ("The file has an XML comment, which the next save would lose."));
}

static void
on_instruction (void          *ctxt,
                const xmlChar *target,
                const xmlChar *text)
{
  tell_unkept (ctxt, text,
               _ ("The file has a processing instruction, which the next save would lose."));
}

static void
on_error (void     *ctxt,
          XmlError  error)
{
  Gate *gate = gate_of (ctxt);
  g_autofree char *message = NULL;

  if (error->level < XML_ERR_ERROR || gate->closed)
    return;

  gate->closed = TRUE;
  message = g_strchomp (g_utf8_make_valid (error->message != NULL ? error->message : "?", -1));
  lw_reader_tell (gate->reader, (guint) MAX (error->line, 0),
                  _ ("Mend that line, or open the last good copy."),
                  _ ("The file is not well-formed XML: %s."), message);
}

/* After a problem that ends the reading the parser would go on to the end: it is given no more.
 * Its own table of names gets slow when it is large. */
static int
on_read (void *data,
         char *into,
         int   room)
{
  Gate *gate = data;
  int n = (int) MIN (gate->end - gate->data, room);

  if (!gate->closed && xmlDictSize (gate->parser->dict) > MOST_NAMES)
    {
      gate->closed = TRUE;
      lw_reader_tell (gate->reader, line_now (gate->parser),
                      _ ("Open another file, or the last good copy."),
                      _ ("The file has too many different names of elements and attributes."));
    }
  if (gate->closed)
    return 0;

  memcpy (into, gate->data, (gsize) n);
  gate->data += n;

  return n;
}

static xmlParserCtxt *
parser_new (Gate *gate)
{
  static gsize once;
  xmlParserCtxt *parser;

  if (g_once_init_enter (&once))
    {
      xmlInitParser ();
      g_once_init_leave (&once, 1);
    }

  parser = xmlNewParserCtxt ();
  if (parser == NULL)
    g_error ("out of memory");

  gate->parser = parser;
  parser->_private = gate;
  parser->sax->internalSubset = on_dtd;
  parser->sax->startElementNs = on_start;
  parser->sax->characters = on_text;
  parser->sax->ignorableWhitespace = on_text;
  parser->sax->cdataBlock = on_text;
  parser->sax->comment = on_comment;
  parser->sax->processingInstruction = on_instruction;
  parser->sax->serror = on_error;

  return parser;
}

xmlDoc *
lw_gate_read (LwReader   *reader,
              const char *data,
              gsize       length)
{
  Gate gate = { .reader = reader, .data = data, .end = data + length };
  g_autoptr (xmlParserCtxt) parser = NULL;
  g_autoptr (xmlDoc) doc = NULL;

  if (!lw_gate_check_bytes (reader, data, length))
    return NULL;

  parser = parser_new (&gate);
  doc = xmlCtxtReadIO (parser, on_read, NULL, &gate, NULL, NULL,
                       XML_PARSE_NONET | XML_PARSE_BIG_LINES | XML_PARSE_IGNORE_ENC);

  if (doc == NULL && !gate.closed)
    lw_reader_tell (reader, 0, _ ("Open another file, or the last good copy."),
                    _ ("The file cannot be read as XML."));
  else if (!gate.closed)
    return g_steal_pointer (&doc);

  return NULL;
}

guint
lw_gate_line (const xmlNode *node)
{
  return GPOINTER_TO_UINT (node->_private);
}
