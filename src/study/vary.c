/* The sources of variation and their notation. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/vary.h"

#include <math.h>
#include <string.h>

#include "season/text.h"

#define ASSUMED N_ ("assumed")
#define PRACTICE N_ ("common practice, no source")

#define BATCH(sd, percent) { sd, percent, FALSE }
#define STEP(sd, percent) { sd, percent, TRUE }

static const LwVaryRow rows[LW_N_VARY] = {
  [LW_VARY_MOISTURE] = { "moisture", N_ ("fresh moisture"), N_ ("% points"), N_ ("leaf"), BATCH (1, FALSE), 20, FALSE,
                         FALSE, ASSUMED },
  [LW_VARY_SKIN] = { "skin", N_ ("skin of the leaf"), "", N_ ("leaf"), BATCH (10, TRUE), 0, TRUE, FALSE, ASSUMED },
  [LW_VARY_OXIDATION] = { "oxidation", N_ ("speed of oxidation"), "", N_ ("leaf"), BATCH (10, TRUE), 0, TRUE, FALSE,
                          ASSUMED },
  [LW_VARY_ENZYME] = { "enzyme", N_ ("speed of enzyme loss"), "", N_ ("leaf"), BATCH (10, TRUE), 0, TRUE, FALSE,
                       ASSUMED },
  [LW_VARY_AIR] = { "air", N_ ("air of room and weather"), N_ ("°C"), N_ ("weather"), BATCH (1.5, FALSE), 20, FALSE,
                    FALSE, ASSUMED },
  [LW_VARY_HUMIDITY] = { "humidity", N_ ("humidity"), N_ ("% points"), N_ ("weather"), BATCH (5, FALSE), 40, FALSE,
                         FALSE, ASSUMED },
  [LW_VARY_SUN] = { "sun", N_ ("sun"), "", N_ ("weather"), BATCH (10, TRUE), 0, TRUE, FALSE, ASSUMED },
  [LW_VARY_WALL] = { "wall", N_ ("wall temperature"), N_ ("°C"), N_ ("hand"), STEP (5, FALSE), 100, TRUE, TRUE,
                     PRACTICE },
  [LW_VARY_HOT_AIR] = { "hot-air", N_ ("heated air"), N_ ("°C"), N_ ("hand"), STEP (3, FALSE), 100, TRUE, TRUE,
                        PRACTICE },
  [LW_VARY_TIME] = { "time", N_ ("time"), N_ ("min"), N_ ("hand"), STEP (3, TRUE), 600, TRUE, TRUE, PRACTICE },
  [LW_VARY_LOAD] = { "load", N_ ("load"), N_ ("kg"), N_ ("hand"), STEP (5, TRUE), 50, TRUE, TRUE, PRACTICE },
  [LW_VARY_LAYER] = { "layer", N_ ("thickness of the layer"), N_ ("kg/m²"), N_ ("hand"), STEP (10, TRUE), 20, TRUE,
                      TRUE, ASSUMED },
  [LW_VARY_PRESSURE] = { "pressure", N_ ("pressure"), N_ ("kPa"), N_ ("hand"), STEP (10, TRUE), 10, TRUE, TRUE,
                         ASSUMED },
};

const LwVaryRow *
lw_vary_row (LwVarySource source)
{
  return &rows[source];
}

void
lw_vary_usual (LwVary varies[LW_N_VARY])
{
  for (guint i = 0; i < LW_N_VARY; i++)
    varies[i] = rows[i].usual;
}

static int
find_source (const char *name,
             gsize       length)
{
  for (int i = 0; i < LW_N_VARY; i++)
    if (strlen (rows[i].id) == length && strncmp (rows[i].id, name, length) == 0)
      return i;

  return -1;
}

static gboolean
refuse (GError    **error,
        const char *format,
        ...) G_GNUC_PRINTF (2, 3);

static gboolean
refuse (GError    **error,
        const char *format,
        ...)
{
  va_list args;

  va_start (args, format);
  if (error != NULL)
    *error = g_error_new_valist (G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT, format, args);
  va_end (args);

  return FALSE;
}

/* Says what is wrong with an amount that can be read, if anything. */
static gboolean
check_amount (const LwVaryRow *row,
              const LwVary    *vary,
              GError         **error)
{
  double most = vary->percent ? LW_VARY_MOST_PCT : row->most;

  if (vary->percent && !row->percent)
    return refuse (error, _ ("“%s” is given in %s, not as a share of the value"), row->id, lw_unit_words (row->unit));
  if (!vary->percent && row->most <= 0 && vary->sd != 0)
    return refuse (error, _ ("“%s” is given in percent, such as %s=10%%"), row->id, row->id);
  if (vary->each_step && !row->steps)
    return refuse (error, _ ("“%s” is one for the whole batch"), row->id);
  if (!(vary->sd >= 0 && vary->sd <= most) && vary->sd != 0)
    return refuse (error, _ ("“%s” strays by 0 to %g"), row->id, most);

  return TRUE;
}

/* "/step", "/step2" or "/batch". */
static gboolean
parse_where (const char *text,
             LwVary     *vary)
{
  guint64 only;

  vary->each_step = g_str_has_prefix (text, "/step");
  vary->only = 0;
  if (strcmp (text, "/batch") == 0 || strcmp (text, "/step") == 0)
    return TRUE;
  if (!vary->each_step || !g_ascii_string_to_unsigned (text + strlen ("/step"), 10, 1, G_MAXUINT, &only, NULL))
    return FALSE;

  vary->only = (guint) only;

  return TRUE;
}

static gboolean
parse_amount (const char *text,
              LwVary     *vary)
{
  char *end;

  if (!g_ascii_isdigit (*text) && *text != '.')
    return FALSE;

  vary->sd = g_ascii_strtod (text, &end);
  vary->percent = *end == '%';
  end += vary->percent;
  if (*end != '\0' && !parse_where (end, vary))
    return FALSE;

  return isfinite (vary->sd);
}

gboolean
lw_vary_parse (const char *text,
               LwVary      varies[LW_N_VARY],
               GError    **error)
{
  const char *equals = strchr (text, '=');
  int source = equals != NULL ? find_source (text, (gsize) (equals - text)) : -1;
  LwVary vary;

  if (strcmp (text, "all=0") == 0)
    {
      for (guint i = 0; i < LW_N_VARY; i++)
        varies[i].sd = 0;
      return TRUE;
    }
  if (source < 0)
    return refuse (error, _ ("“%s” names no source of variation, such as wall=5"), text);

  vary = rows[source].usual;
  if (!parse_amount (equals + 1, &vary))
    return refuse (error, _ ("“%s” says no amount, such as wall=5, time=3%%, wall=5/batch or wall=5/step2"), text);
  if (!check_amount (&rows[source], &vary, error))
    return FALSE;

  varies[source] = vary;

  return TRUE;
}

char *
lw_vary_text (LwVary vary)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *only = vary.only > 0 ? g_strdup_printf ("%u", vary.only) : NULL;

  g_ascii_formatd (digits, sizeof digits, "%.6g", vary.sd);

  return g_strconcat (digits, vary.percent ? "%" : "", vary.each_step ? "/step" : "/batch", only, NULL);
}
