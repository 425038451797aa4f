/* Any bytes may be given to the reader: it never crashes, tells a problem or gives a season, and
 * a season it gives is written and read back to the same bytes. With a fuzzing engine, or alone:
 * then it replays the files named, and seeded changes of them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "any-bytes.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "season/document.h"

#define N_CHANGED 2000
#define SEED 20260412

static guint n_seasons;

static char *
write_again (const char *text,
             gsize       length,
             gsize      *written)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_read (text, length, problems);

  demand (season != NULL, "what was written cannot be read");

  return lw_document_write (season, written);
}

int
LLVMFuzzerTestOneInput (const guint8 *data,
                        size_t        size)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_read ((const char *) data, size, problems);
  g_autofree char *text = NULL, *again = NULL;
  gsize length, again_length;

  demand ((season != NULL) == (problems->len == 0), "neither a season nor a problem, or both");
  for (guint i = 0; i < problems->len; i++)
    {
      g_autofree char *told = lw_problem_text (g_ptr_array_index (problems, i), "file");

      demand (g_utf8_validate (told, -1, NULL), "a problem is no text");
    }

  if (season == NULL)
    return 0;

  n_seasons++;
  text = lw_document_write (season, &length);
  if (length > LW_MAX_FILE_BYTES)
    return 0;

  again = write_again (text, length, &again_length);
  demand (again_length == length && memcmp (text, again, length) == 0, "not the same bytes");

  return 0;
}

#ifndef LW_FUZZ_ENGINE
/* Things that matter to the reader, to be put in or over what is there. */
static const char *const scraps[] = {
  "<", ">", "\"", "'", "&", "&amp;", "&#0;", "&#x10FFFF;", "]]>", "<![CDATA[", "<!--", "-->",
  "<?a?>", "<!DOCTYPE a>", "=", "/", "\xff", "\xef\xbf\xbf", "\xed\xa0\x80", "\n", "\r", "\t",
  " ", "", "0", "-", "e", "1e999", "NaN", "9999999999", "<note>", "</note>", "<note/>",
  "<step kind=\"roll\" minutes=\"3\"/>", "<aim of=\"moisture\" low=\"1\"/>", "xmlns=\"\"",
  "xmlns:a=\"b\"", "a:", "xml:space=\"preserve\"", " tea=\"\"", "</batch>", "</season>",
};

static void
put_scrap (GString *bytes,
           gsize    at,
           GRand   *random)
{
  gsize gone = (gsize) g_rand_int_range (random, 0, 12);

  g_string_erase (bytes, (gssize) at, (gssize) MIN (gone, bytes->len - at));
  g_string_insert (bytes, (gssize) at, scraps[g_rand_int_range (random, 0, G_N_ELEMENTS (scraps))]);
}

static void
flip_bit (GString *bytes,
          gsize    at,
          GRand   *random)
{
  if (at < bytes->len)
    bytes->str[at] = (char) (bytes->str[at] ^ 1 << g_rand_int_range (random, 0, 8));
}

static void
change_digit (GString *bytes,
              gsize    at,
              GRand   *random)
{
  while (at < bytes->len && !g_ascii_isdigit (bytes->str[at]))
    at++;
  if (at < bytes->len)
    bytes->str[at] = (char) ('0' + g_rand_int_range (random, 0, 10));
}

static void
double_line (GString *bytes,
             gsize    at,
             GRand   *random)
{
  const char *start = memchr (bytes->str + at, '\n', bytes->len - at);
  const char *end = start != NULL ? strchr (start + 1, '\n') : NULL;
  g_autofree char *line = end != NULL ? g_strndup (start, (gsize) (end - start)) : NULL;

  if (line != NULL)
    g_string_insert (bytes, end - bytes->str, line);
}

/* From one change, which often leaves a season, to many, which seldom do. */
static void
change (GString *bytes,
        GRand   *random)
{
  static void (*const changes[]) (GString *, gsize, GRand *) = {
    change_digit, change_digit, double_line, flip_bit, put_scrap,
  };
  int n = 1 << g_rand_int_range (random, 0, 4);

  for (int i = 0; i < n; i++)
    {
      gsize at = (gsize) g_rand_int_range (random, 0, (gint32) bytes->len + 1);

      changes[g_rand_int_range (random, 0, G_N_ELEMENTS (changes))] (bytes, at, random);
    }
}

/* Every other case starts from a season. */
static void
run_changed (GPtrArray *files,
             GPtrArray *seasons)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  for (guint i = 0; i < N_CHANGED; i++)
    {
      GPtrArray *from = i % 2 == 0 ? seasons : files;
      const GString *file = g_ptr_array_index (from, i / 2 % from->len);
      g_autoptr (GString) bytes = g_string_new_len (file->str, (gssize) file->len);

      change (bytes, random);
      LLVMFuzzerTestOneInput ((const guint8 *) bytes->str, bytes->len);
    }
}

static GString *
load (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *data = NULL;
  gsize length;

  if (!g_file_get_contents (path, &data, &length, &error))
    {
      fprintf (stderr, "%s\n", error->message);
      exit (1);
    }

  return g_string_new_len (data, (gssize) length);
}

static void
string_free (GString *string)
{
  g_string_free (string, TRUE);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GPtrArray) files = g_ptr_array_new_with_free_func ((GDestroyNotify) string_free);
  g_autoptr (GPtrArray) seasons = g_ptr_array_new ();

  for (int i = 1; i < argc; i++)
    {
      GString *file = load (argv[i]);
      guint before = n_seasons;

      g_ptr_array_add (files, file);
      LLVMFuzzerTestOneInput ((const guint8 *) file->str, file->len);
      if (n_seasons > before)
        g_ptr_array_add (seasons, file);
    }

  if (seasons->len > 0)
    run_changed (files, seasons);
  printf ("%u files, of them %u seasons; with %d changed ones %u seasons\n", files->len,
          seasons->len, N_CHANGED, n_seasons);

  return seasons->len > 0 ? 0 : 1;
}
#endif
