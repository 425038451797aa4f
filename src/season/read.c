/* Reading the document: the season itself, and what holds between its entries. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/document.h"

#include <string.h>

#include "season/correction.h"
#include "season/gate.h"
#include "season/notation.h"
#include "season/read-lesson.h"
#include "season/reader.h"
#include "season/text.h"

/* The season being read, and where its entries stand. */
typedef struct
{
  LwSeason *season;
  GHashTable *leaves;     /* id or name to node */
  GHashTable *weathers;
  GHashTable *batches;
  GHashTable *lessons;
  GPtrArray *batch_nodes; /* in the season's order */
  GPtrArray *lesson_nodes;
} Taken;

/* Notes `key` of `node`; tells if it has been taken. A missing key has been told of already. */
static void
take_key (LwReader   *reader,
          GHashTable *keys,
          const char *key,
          xmlNode    *node)
{
  const xmlNode *first = g_hash_table_lookup (keys, key);
  g_autofree char *quoted = NULL, *remedy = NULL;

  if (*key == '\0')
    return;

  if (first == NULL)
    {
      g_hash_table_insert (keys, g_strdup (key), node);
      return;
    }

  quoted = lw_reader_quote (key);
  remedy = g_strdup_printf (_ ("Give this one another name; the first is in line %u."),
                            lw_gate_line (first));
  lw_reader_tell (reader, lw_gate_line (node), remedy,
                  _ ("There is more than one “%s” called “%s”."),
                  (const char *) node->name, quoted);
}

static void
read_place (LwReader *reader,
            xmlNode  *node,
            LwSeason *season)
{
  enum { NAME, ALTITUDE, LATITUDE };
  LwValue values[LW_MAX_ATTRS];

  lw_reader_attrs (reader, node, LW_E_PLACE, values);
  g_free (season->place);
  season->place = g_strdup (values[NAME].text);
  season->altitude_m = values[ALTITUDE].number;
  season->latitude_deg = values[LATITUDE].number;
}

static void
take_profile (LwReader *reader,
              xmlNode  *node,
              Taken    *taken)
{
  LwProfile *profile = lw_read_profile (reader, node);

  lw_season_add_profile (taken->season, profile);
  take_key (reader, taken->leaves, profile->id, node);
}

static void
take_weather (LwReader *reader,
              xmlNode  *node,
              Taken    *taken)
{
  LwWeather *weather = lw_read_weather (reader, node);

  if (weather == NULL)
    return;

  lw_season_add_weather (taken->season, weather);
  take_key (reader, taken->weathers, weather->id, node);
}

static void
take_batch (LwReader *reader,
            xmlNode  *node,
            Taken    *taken)
{
  LwBatch *batch = lw_read_batch (reader, node);

  lw_season_insert_batch (taken->season, taken->season->n_batches, batch);
  g_ptr_array_add (taken->batch_nodes, node);
  take_key (reader, taken->batches, batch->name, node);
}

static void
take_lesson (LwReader *reader,
             xmlNode  *node,
             Taken    *taken)
{
  LwLesson *lesson = lw_read_lesson (reader, node);

  lw_season_add_lesson (taken->season, lesson);
  g_ptr_array_add (taken->lesson_nodes, node);
  take_key (reader, taken->lessons, lesson->name, node);
}

static void
take_in_season (LwReader *reader,
                xmlNode  *node,
                LwElement element,
                gpointer  into)
{
  Taken *taken = into;

  if (element == LW_E_PLACE)
    read_place (reader, node, taken->season);
  else if (element == LW_E_LEAF)
    take_profile (reader, node, taken);
  else if (element == LW_E_WEATHER)
    take_weather (reader, node, taken);
  else if (element == LW_E_BATCH)
    take_batch (reader, node, taken);
  else if (element == LW_E_LESSON)
    take_lesson (reader, node, taken);
  else
    taken->season->note = lw_reader_note (reader, node, LW_E_NOTE, taken->season->note);
}

static void
check_reference (LwReader   *reader,
                 xmlNode    *node,
                 const char *what,
                 const char *id,
                 GHashTable *known)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  g_autofree char *quoted = NULL, *advice = NULL;
  GHashTableIter iter;
  gpointer key;

  if (id == NULL || *id == '\0' || g_hash_table_contains (known, id))
    return;

  g_hash_table_iter_init (&iter, known);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    g_ptr_array_add (names, key);

  quoted = lw_reader_quote (id);
  advice = lw_reader_advice (id, names, _ ("Add it to the season, or name one that is there."));
  lw_reader_tell (reader, lw_gate_line (node), advice,
                  _ ("The season has no “%s” with the id “%s”."), what, quoted);
}

/* Of as many parts as the leaf has. */
static void
check_corrections (LwReader      *reader,
                   xmlNode       *node,
                   const LwBatch *batch,
                   const LwSeason *season)
{
  const LwProfile *leaf = lw_season_profile (season, batch->leaf);

  for (guint i = 0; leaf != NULL && i < batch->n_steps; i++)
    if (batch->steps[i].correction != NULL && batch->steps[i].correction->jump->n_parts != leaf->n_parts)
      lw_reader_tell (reader, lw_gate_line (node), _ ("Write one “shift” for each part, or remove the correction."),
                      _ ("The correction in step %u has not as many shifts as its leaf has parts."), i + 1);
}

/* Whether a lesson's batch is there. */
static void
check_batch (LwReader   *reader,
             xmlNode    *node,
             const char *batch,
             GHashTable *known)
{
  g_autofree char *quoted = lw_reader_quote (batch);

  if (*batch != '\0' && !g_hash_table_contains (known, batch))
    lw_reader_tell (reader, lw_gate_line (node), _ ("Show a batch of the season, or remove the lesson."),
                    _ ("The lesson shows “%s”, and the season has no such batch."), quoted);
}

static void
check_references (LwReader    *reader,
                  const Taken *taken)
{
  for (guint i = 0; i < taken->season->n_batches; i++)
    {
      const LwBatch *batch = taken->season->batches[i];
      xmlNode *node = g_ptr_array_index (taken->batch_nodes, i);

      check_reference (reader, node, "leaf", batch->leaf, taken->leaves);
      check_reference (reader, node, "weather", batch->weather, taken->weathers);
      check_corrections (reader, node, batch, taken->season);
    }

  for (guint i = 0; i < taken->season->n_lessons; i++)
    for (guint k = 0; k < taken->season->lessons[i]->n_shown; k++)
      check_batch (reader, g_ptr_array_index (taken->lesson_nodes, i), taken->season->lessons[i]->shown[k], taken->batches);
}

static gboolean
is_newer (const char *version)
{
  double number;

  return lw_number_parse (version, &number) && number > g_ascii_strtod (LW_SEASON_VERSION, NULL);
}

/* Whether the document is one of ours, of a version that can be read. */
static gboolean
check_root (LwReader *reader,
            xmlNode  *root)
{
  g_autoptr (xmlChar) version = xmlGetNoNsProp (root, (const xmlChar *) "version");
  const char *namespace = root->ns != NULL ? (const char *) root->ns->href : "";
  g_autofree char *quoted = lw_reader_quote (namespace);
  g_autofree char *root_quoted = lw_reader_quote ((const char *) root->name);
  g_autofree char *remedy = g_strdup_printf (_ ("Write xmlns=\"%s\" in the element “season”."),
                                             LW_SEASON_NS);
  guint line = lw_gate_line (root);

  if (strcmp ((const char *) root->name, "season") != 0)
    lw_reader_tell (reader, line, _ ("Open a season's file."),
                    _ ("This is no season: the document's element is “%s”."), root_quoted);
  else if (strcmp (namespace, LW_SEASON_NS) != 0)
    lw_reader_tell (reader, line, remedy,
                    _ ("The document's namespace is “%s”, not that of a season."), quoted);
  else if (version != NULL && is_newer ((const char *) version))
    lw_reader_tell (reader, line, _ ("Open it with a newer version of the program."),
                    _ ("The file was written by a newer version of the program."));
  else
    return TRUE;

  return FALSE;
}

static LwSeason *
read_season (LwReader *reader,
             xmlNode  *root)
{
  enum { VERSION, NAME };
  LwValue values[LW_MAX_ATTRS];
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (GHashTable) leaves = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GHashTable) weathers = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GHashTable) batches = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GHashTable) lessons = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GPtrArray) nodes = g_ptr_array_new (), lesson_nodes = g_ptr_array_new ();
  Taken taken = { NULL, leaves, weathers, batches, lessons, nodes, lesson_nodes };

  lw_reader_attrs (reader, root, LW_E_SEASON, values);
  taken.season = season = lw_season_new (lw_value_text (&values[NAME]));
  lw_reader_children (reader, root, LW_E_SEASON, take_in_season, &taken);
  check_references (reader, &taken);

  return reader->problems->len == 0 ? g_steal_pointer (&season) : NULL;
}

static int
compare_lines (gconstpointer a,
               gconstpointer b)
{
  const LwProblem *one = *(LwProblem *const *) a, *other = *(LwProblem *const *) b;

  return (one->line > other->line) - (one->line < other->line);
}

LwSeason *
lw_document_read (const char *data,
                  gsize       length,
                  GPtrArray  *problems)
{
  g_autoptr (GPtrArray) found = lw_problems_new ();
  g_autoptr (GStringChunk) strings = g_string_chunk_new (4096);
  LwReader reader = { .problems = found, .strings = strings };
  g_autoptr (xmlDoc) doc = lw_gate_read (&reader, data, length);
  xmlNode *root = doc != NULL ? xmlDocGetRootElement (doc) : NULL;
  g_autoptr (LwSeason) season = NULL;

  if (root != NULL && check_root (&reader, root))
    season = read_season (&reader, root);

  g_ptr_array_sort (found, compare_lines);
  g_ptr_array_extend_and_steal (problems, g_steal_pointer (&found));

  return g_steal_pointer (&season);
}
