/* Water at small scale: how small bodies jitter and turn in it, and what a lens resolves. */
(function (field) {
  "use strict";
  var BOLTZMANN = 1.380649e-23;       // J/K, exact in the SI
  var ZERO_CELSIUS = 273.15;          // K
  var WAVELENGTH_UM = 0.55;           // green light, as in every sum of the bench quantities

  /* Stokes-Einstein: µm²/s for a sphere of `diameter` µm in still water; `viscosity` in mPa s. */
  field.diffusion = function (diameter, celsius, viscosity) {
    return BOLTZMANN * (ZERO_CELSIUS + celsius) / (3 * Math.PI * viscosity * 1e-3 * diameter * 1e-6) * 1e12;
  };

  /* The same for a rod, mean of all directions, with end corrections (Tirado and Garcia de la Torre, from memory). */
  field.rodDiffusion = function (length, width, celsius, viscosity) {
    var p = length / width;
    return field.diffusion(length, celsius, viscosity) * (Math.log(p) + 0.312 + 0.565 / p - 0.1 / (p * p));
  };

  /* How a rod turns end over end: rad²/s, with the end corrections of the same authors. */
  field.rodTurning = function (length, width, celsius, viscosity) {
    var p = length / width;
    return 9 * field.diffusion(length, celsius, viscosity) / (length * length) * (Math.log(p) - 0.662 + 0.917 / p - 0.05 / (p * p));
  };

  /* Smallest spacing an objective resolves, µm: 0.61 × wavelength / numerical aperture. */
  field.resolution = function (aperture) { return 0.61 * WAVELENGTH_UM / aperture; };

  /* Whether a body is large enough to show at all, as a dot, through an objective that resolves `resolved` µm. */
  field.seen = function (length, width, resolved) { return Math.sqrt(length * width) >= 0.6 * resolved; };

  /* A Brownian step of a body in `dt` seconds. */
  field.jitter = function (b, here, dt) {
    if (b.diffusion === undefined) {
      b.diffusion = b.p.length > 1.2 * b.p.width ? field.rodDiffusion(b.p.length, b.p.width, here.temperature, here.viscosity)
        : field.diffusion(b.p.length, here.temperature, here.viscosity);
    }
    var far = Math.sqrt(2 * b.diffusion * dt);
    b.x += far * field.normal(b);
    b.y += far * field.normal(b);
  };
})(self.WetmountField);
