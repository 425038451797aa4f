/* Small documents that hold one attribute at one value, made from the grammar's tables. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/shape.h"

/* The attribute under test. `value` NULL: left out. */
typedef struct
{
  LwElement element;
  int word;          /* of the element's choice, -1 where it has none */
  const char *name;
  const char *value;
} Specimen;

/* (transfer full) a document that is right but for the specimen. */
char *specimen_text (const Specimen *specimen);
